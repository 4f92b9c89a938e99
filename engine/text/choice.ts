/** Raised figures, which many keyboards do not have, and what people type for them. */
const raised: Readonly<Record<string, string>> = { "²": "2", "³": "3" };

const typed = (text: string): string => text.replaceAll(/[²³]/g, (figure) => raised[figure] ?? "");

/** The choice that a text names: `ft2` is `ft²` where only that is a choice. Undefined where it is none. */
export function choiceNamed(text: string, choices: readonly string[]): string | undefined {
  if (choices.includes(text)) return text;
  const meant = choices.filter((one) => typed(one) === typed(text));
  return meant.length === 1 ? meant[0] : undefined;
}
