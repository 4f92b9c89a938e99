/** Tells how far a run is: to a terminal at most five times a second, else not at all. */
export class Progress {
  readonly #begun = Date.now();
  #told = 0;
  #count = 0;
  #wide = 0;

  constructor(
    private readonly total: number,
    private readonly tell: ((text: string) => void) | undefined,
  ) {}

  add(count: number): void {
    this.#count += count;
    const now = Date.now();
    if (this.tell === undefined || now - this.#told < 200) return;
    this.#told = now;
    const text = progressText(this.#count, this.total, (now - this.#begun) / 1000);
    this.#wide = Math.max(this.#wide, text.length);
    this.tell(`\r${text.padEnd(this.#wide)}`);
  }

  /** Wipes the line. */
  end(): void {
    if (this.tell !== undefined && this.#wide > 0) this.tell(`\r${" ".repeat(this.#wide)}\r`);
  }
}

/** `3,200 of 10,000 files, 812 a second, 8 s left`. */
export function progressText(count: number, total: number, seconds: number): string {
  const rate = seconds > 0 ? count / seconds : 0;
  const left = rate > 0 ? `, ${time((total - count) / rate)} left` : "";
  return `${shown(count)} of ${shown(total)} files, ${shown(rate)} a second${left}`;
}

const shown = (value: number) => Math.round(value).toLocaleString("en-US");

const time = (seconds: number) =>
  seconds < 90 ? `${Math.ceil(seconds)} s` : `${Math.ceil(seconds / 60)} min`;
