export interface Voices {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Shows how far long work is; given where someone watches at a terminal. */
  readonly progress?: (text: string) => void;
  /** Asks a person, and gives what was typed; given where someone types at a terminal. */
  readonly ask?: (words: string) => Promise<string>;
  /** Whether what `out` says may be colored. */
  readonly color?: boolean;
}

/**
 * Voices of a command that may take a while: where someone watches at a terminal, a line says that it works, from
 * `begin` on, and is wiped before anything else is told.
 */
export function waiting({
  out,
  err,
  progress,
  ask,
}: Voices): Voices & { begin(words: string): void } {
  let waits = false;
  const wipe = () => {
    if (waits) progress?.("\r\u001b[K");
    waits = false;
  };
  const wiped = (voice: (text: string) => void) => (text: string) => {
    if (text === "") return;
    wipe();
    voice(text);
  };
  return {
    out: wiped(out),
    err: wiped(err),
    ...(progress === undefined ? {} : { progress: wiped(progress) }),
    ...(ask === undefined
      ? {}
      : {
          ask: (words: string) => {
            wipe();
            return ask(words);
          },
        }),
    begin: (words) => {
      progress?.(words);
      waits = progress !== undefined;
    },
  };
}
