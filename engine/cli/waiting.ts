import type { Voices } from "./run.js";

/**
 * Voices of a command that may take a while: where someone watches at a terminal, a line says that it works, from
 * `begin` on, and is wiped before anything else is told.
 */
export function waiting({ out, err, progress }: Voices): Voices & { begin(words: string): void } {
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
    begin: (words) => {
      progress?.(words);
      waits = progress !== undefined;
    },
  };
}
