import type { TrailEntry } from "../job/trail/entry.js";
import { changedSections, type Sections, sealIn, signerOf } from "../seal/index.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import type { Finding, Grade } from "./finding.js";

/** What a seal says of a workbook. */
export interface SealState {
  /**
   * `whole`: signed, and all is as it was sealed. `digest`: the same without a key, which anybody can make
   * anew. `broken`: no seal of ours, a signature that does not hold, or something was changed. `untold`: the
   * template is not known, so that nobody can say what the workbook holds.
   */
  readonly state: "none" | "whole" | "digest" | "broken" | "untold";
  readonly time?: string;
  /** Fingerprint of the key that signed, where the signature holds. */
  readonly key?: string;
  /** What was changed since it was sealed. */
  readonly changed?: readonly string[];
}

/**
 * Reads the seal of a workbook and holds it against what the workbook is now.
 * @param sections what it is now, asked of a workbook with a seal alone; undefined where the template is not known
 */
export function sealState(
  content: WorkbookContent,
  sections: (() => Sections) | undefined,
): SealState {
  const seal = sealIn(content.properties.custom);
  if (seal === undefined) return { state: "none" };
  if (seal === "broken") return { state: "broken" };
  const { time } = seal;
  const key = signerOf(seal);
  const by = key === undefined ? {} : { key };
  if (sections === undefined) return { state: "untold", time, ...by };
  const changed = changedSections(seal, sections());
  if (changed.length > 0 || (seal.signed !== undefined && key === undefined)) {
    return { state: "broken", time, ...by, changed };
  }
  return { state: seal.signed === undefined ? "digest" : "whole", time, ...by };
}

/**
 * What is to be said of a seal.
 * @param wanted fingerprint of the key that should have sealed, where one was given
 * @param looksOtherwise whether something was found that changes how the pages look, which no seal stands over
 */
export function checkSeal(
  { state, time = "", key, changed = [] }: SealState,
  wanted: string | undefined,
  trail: readonly TrailEntry[],
  looksOtherwise: boolean,
): Finding[] {
  const tell = (grade: Grade, found: string, expected: string, advice: string): Finding[] => [
    { grade, code: "seal", where: "the seal", found, expected, advice },
  ];
  const ask = changed.includes("template")
    ? "Audit it by the version of the program that wrote it; then ask the office for the bid as it was sent."
    : "Ask the office that sealed it for the bid as it was sent.";
  if (state === "none") {
    if (wanted === undefined) return [];
    const none =
      "It has no seal. If the office seals its bids, ask it for the sealed one; the office itself seals it with rillbook seal --key.";
    return tell("wrong", "no seal", `the seal of the key ${wanted}`, none);
  }
  if (state === "broken") {
    const what = changed.length > 0 ? `changed since it was sealed: ${changed.join(", ")}` : "";
    const who = key === undefined ? "a seal whose signature does not hold" : `the key ${key}`;
    return tell("wrong", what || who, `a bid as it was sealed${time && `, ${time}`}`, ask);
  }
  const beyond = looksOtherwise
    ? "how the pages look is no part of the seal, and is not as written: see the findings of it"
    : "how the pages look is no part of the seal";
  const none = looksOtherwise ? "See the findings of how the pages look." : "Nothing.";
  const last = trail.at(-1)?.time ?? "";
  const early: Finding[] =
    last > time
      ? tell(
          "doubtful",
          `sealed at ${time}, before the last entry of its trail, of ${last}`,
          "a seal made after what it stands over",
          "Ask whose clock was wrong.",
        )
      : [];
  if (state === "digest") {
    const found = `as it was sealed at ${time}, without a key: anybody can make such a seal anew; ${beyond}`;
    const grade = wanted === undefined ? "to know" : "wrong";
    const expected = wanted === undefined ? "a seal by a key" : `the seal of the key ${wanted}`;
    return [...tell(grade, found, expected, wanted === undefined ? none : ask), ...early];
  }
  if (wanted !== undefined && wanted !== key) {
    return tell("wrong", `sealed at ${time} by the key ${key}`, `by the key ${wanted}`, ask);
  }
  const what = `inputs, prices, template, values and the text of the pages as sealed at ${time}`;
  return [
    ...(wanted === undefined
      ? tell(
          "to know",
          `${what} by the unverified key ${key}; ${beyond}`,
          "a key known from the office itself",
          `${looksOtherwise ? `${none} ` : ""}Hold the key against the office's: rillbook audit --key; anybody can make a key and seal by it.`,
        )
      : tell("to know", `${what} by the key that was given, ${key}; ${beyond}`, "that key", none)),
    ...early,
  ];
}
