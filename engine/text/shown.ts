/**
 * What a terminal would obey, or a reader would not see: control characters besides tab and line
 * feed, marks that turn the direction of writing, spaces without width, halves of a pair. Variation
 * selectors stay: they only choose the look of the sign before them.
 */
const unseen =
  /[^\P{Cc}\t\n]|[\p{Cf}\p{Zl}\p{Zp}\p{Cs}]|(?!\p{Variation_Selector})\p{Default_Ignorable_Code_Point}/gu;

/** Text on its way to a terminal or a report: what would be obeyed or unseen is shown, as ⟨U+202E⟩. */
export const shownText = (text: string): string =>
  text.replaceAll(unseen, (one) => `⟨U+${hex(one.codePointAt(0) as number)}⟩`);

/** A value as JSON that means the same and holds nothing unseen: escapes stand for it. */
export const shownJson = (value: unknown, indent?: number): string =>
  (JSON.stringify(value, null, indent) ?? "null").replaceAll(unseen, (one) =>
    Array.from({ length: one.length }, (_, i) => `\\u${hex(one.charCodeAt(i)).toLowerCase()}`).join(
      "",
    ),
  );

const hex = (code: number): string => code.toString(16).toUpperCase().padStart(4, "0");
