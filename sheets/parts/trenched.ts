/** A trench that a part's pipe or cable lies in. */
export interface Trench {
  readonly trench: string;
  /** That of the pipes, or a narrow one dug by hand. */
  readonly kind: "pipe" | "narrow";
  /** A formula for the length of what lies in it. */
  readonly pipe: string;
  /** Of bedding under it, in inches. */
  readonly bedding: number;
  /** In inches; absent where the trench is as wide and deep as that of the pipes. */
  readonly width?: number;
  readonly depth?: number;
}
