const redrawn = 200;
const lineEvery = 15_000;

/**
 * Tells how far a run is: to a terminal at most five times a second on one line, to a log as a
 * line now and then, the first after a quarter of a minute.
 */
export class Progress {
  readonly #begun = Date.now();
  #told = 0;
  #logged = this.#begun;
  #count = 0;
  #wide = 0;

  constructor(
    private readonly total: number,
    private readonly tell: ((text: string) => void) | undefined,
    private readonly log?: (line: string) => void,
  ) {}

  add(count: number): void {
    this.#count += count;
    const now = Date.now();
    const text = () => progressText(this.#count, this.total, (now - this.#begun) / 1000);
    if (this.log !== undefined && now - this.#logged >= lineEvery) {
      this.#logged = now;
      this.log(text());
    }
    if (this.tell === undefined || now - this.#told < redrawn) return;
    this.#told = now;
    const line = text();
    this.#wide = Math.max(this.#wide, line.length);
    this.tell(`\r${line.padEnd(this.#wide)}`);
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
