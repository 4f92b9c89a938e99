import type { Template } from "../template/template.js";

/**
 * What a command works with: the templates there are, and where it speaks. Both voices show what a
 * terminal would obey or a reader would not see.
 */
export interface Context {
  readonly templates: readonly Template[];
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** The line that says how it stands: green or red at a terminal, and in words everywhere. */
  readonly verdict: (words: string, good: boolean) => void;
  /** A value as JSON to standard output, on a line of its own or indented. */
  readonly json: (value: unknown, indent?: number) => void;
  /** Shows how far long work is; given where someone watches at a terminal. */
  readonly progress?: (text: string) => void;
  /** URL of a module that exports the same templates, for worker threads. */
  readonly templatesModule?: string;
  /** Files of the office's own whose templates are among them. */
  readonly templateFiles?: readonly string[];
  /** Asks a person; given where one types at a terminal. */
  readonly ask?: (words: string) => Promise<string>;
  /** Exit status: 0 done, 1 the bid has failed checks, 2 bad input or usage. */
  status: number;
}
