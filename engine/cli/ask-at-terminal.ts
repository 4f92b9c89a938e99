import { createInterface } from "node:readline/promises";

/** Asks on standard error, so that what goes to standard output stays clean, and gives the line that is typed. */
export async function askAtTerminal(words: string): Promise<string> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  try {
    return await terminal.question(words);
  } finally {
    terminal.close();
  }
}
