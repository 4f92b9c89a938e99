/** One state of the network: the prefix of its names, and the column with its fittings. */
export interface State {
  readonly prefix: "open" | "actual";
  readonly title: string;
  readonly speed: string;
  readonly local: "local_open" | "local_actual";
  /** Height of a row's outlet: out of reach where it counts as shut. */
  readonly stands: string;
}
