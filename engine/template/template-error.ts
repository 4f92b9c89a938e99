import { RillbookError } from "../errors.js";

/** A template that must not be used; all its faults at once. */
export class TemplateError extends RillbookError {
  readonly faults: readonly string[];

  constructor(template: string, faults: readonly string[]) {
    const list = faults.map((fault) => `\n  - ${fault}`).join("");
    super("template-faulty", `Template "${template}" cannot be used:${list}`);
    this.name = "TemplateError";
    this.faults = faults;
  }
}
