/** Less contrast than this between a text and its ground cannot be read; black on white has 21. */
const leastContrast = 1.6;

/**
 * Can a text in a colour be told from its ground? Contrast by relative luminance.
 * Source: W3C, Web Content Accessibility Guidelines 2.1, "contrast ratio" (from memory).
 *
 * @param ink `RRGGBB`, black where left out
 * @param ground white where left out
 */
export function legible(ink = "000000", ground = "FFFFFF"): boolean {
  const [a, b] = [luminance(ink), luminance(ground)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) >= leastContrast;
}

function luminance(color: string): number {
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => {
    const part = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
