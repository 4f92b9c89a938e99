import type { Bench } from "./bench.js";
import { median } from "./table.js";

/** What other programs take for the same workbooks, at a number of processes at a time, seconds. */
export class Others {
  readonly #one: number[] = [];
  readonly #several: number[] = [];
  readonly #gnumeric: number[] = [];

  constructor(
    private readonly at: Bench,
    readonly processes: number,
  ) {}

  /** One round of each. Each process of LibreOffice gets one file, then several; one of Gnumeric gets one. */
  async round(paths: readonly string[]): Promise<void> {
    const { office, gnumeric, size } = this.at;
    const of = (count: number, nth: number) =>
      Array.from({ length: count }, (_, i) => paths[(nth * count + i) % paths.length] as string);
    this.#one.push(await this.#together((nth) => office(of(1, nth), "usual")));
    this.#several.push(await this.#together((nth) => office(of(size.officeFiles, nth), "usual")));
    this.#gnumeric.push(await this.#together((nth) => gnumeric(of(1, nth)[0] as string)));
  }

  /**
   * Seconds that LibreOffice takes for so many jobs: its start once, then each file at the rate of the
   * files after the first. No run of its own at that size, which would take an hour.
   */
  office(jobs: number): number {
    const one = median(this.#one);
    const each = (median(this.#several) - one) / (this.at.size.officeFiles - 1);
    return one - each + (each * jobs) / this.processes;
  }

  /** Gnumeric starts anew for each file. */
  gnumeric(jobs: number): number {
    return (median(this.#gnumeric) * jobs) / this.processes;
  }

  async #together(run: (nth: number) => Promise<unknown>): Promise<number> {
    const begun = performance.now();
    await Promise.all(Array.from({ length: this.processes }, (_, nth) => run(nth)));
    return (performance.now() - begun) / 1000;
  }
}
