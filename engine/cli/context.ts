import type { Template } from "../template/template.js";

/** What a command works with: the templates there are, and where it speaks. */
export interface Context {
  readonly templates: readonly Template[];
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Shows how far long work is; given where someone watches at a terminal. */
  readonly progress?: (text: string) => void;
  /** URL of a module that exports the same templates, for worker threads. */
  readonly templatesModule?: string;
  /** Exit status: 0 done, 1 the bid has failed checks, 2 bad input or usage. */
  status: number;
}
