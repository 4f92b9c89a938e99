/** Jobs of which something is told one by one: the first so many. */
export interface Told {
  readonly count: number;
  readonly first: readonly string[];
}

const mostTold = 10;

/** Counts all, and keeps the first so many. */
export class Telling implements Told {
  count = 0;
  readonly first: string[] = [];

  add(text: string): void {
    this.count += 1;
    if (this.first.length < mostTold) this.first.push(text);
  }
}
