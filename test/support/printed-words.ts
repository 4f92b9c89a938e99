import { execFileSync } from "node:child_process";

/** A word as it is drawn on a page; in points from the upper left corner. */
export interface Word {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface PrintedPage {
  readonly wide: number;
  readonly high: number;
  readonly words: readonly Word[];
  /** Is there ink in a rectangle of the page: anything drawn on its ground? */
  readonly inked: (area: Omit<Word, "text">) => boolean;
}

/** Dots per inch at which pages are looked at: a thin letter of six points is some dots wide. */
const dots = 120;
const perPoint = dots / 72;

/** The pages of a .pdf: their words with where they are drawn, and what ink is seen there. Needs poppler. */
export function printedPages(pdf: string): PrintedPage[] {
  const most = { maxBuffer: 1 << 30 };
  const listed = execFileSync("pdftotext", ["-bbox", pdf, "-"], most).toString("utf8");
  const seen = imagesIn(execFileSync("pdftoppm", ["-gray", "-r", String(dots), pdf], most));
  return listed
    .split("<page ")
    .slice(1)
    .map((text, i) => {
      const [wide = 0, high = 0] = numbersIn(text.slice(0, text.indexOf(">")));
      const inked = inkOf(seen[i]);
      const words = wordsIn(text);
      return { wide, high, words: drawn({ wide, high, words, inked }), inked };
    });
}

const numbersIn = (text: string): number[] =>
  [...text.matchAll(/"(-?[\d.]+)"/g)].map(([, number]) => Number(number));

function wordsIn(page: string): Word[] {
  return [...page.matchAll(/<word ([^>]*)>(.*?)<\/word>/gs)].map(([, box = "", text = ""]) => {
    const [left = 0, top = 0, right = 0, bottom = 0] = numbersIn(box);
    return { text: plain(text), left, right, top, bottom };
  });
}

const plain = (text: string): string =>
  text
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&");

interface Image {
  readonly wide: number;
  readonly high: number;
  readonly gray: Uint8Array;
}

/** Images in the format PGM, one behind the other. */
function imagesIn(bytes: Uint8Array): Image[] {
  const found: Image[] = [];
  for (let at = 0; at < bytes.length; ) {
    const head = /^P5\s(\d+) (\d+)\s255\s/.exec(
      Buffer.from(bytes.subarray(at, at + 40)).toString("latin1"),
    );
    if (head === null) throw new Error("pdftoppm wrote no image of the format PGM.");
    const [wide, high] = [Number(head[1]), Number(head[2])];
    const from = at + head[0].length;
    found.push({ wide, high, gray: bytes.subarray(from, from + wide * high) });
    at = from + wide * high;
  }
  return found;
}

/** So far must a dot be from the ground of its place to count as ink. */
const apart = 50;

function inkOf(image: Image | undefined): PrintedPage["inked"] {
  if (image === undefined) throw new Error("A page of the .pdf was not drawn.");
  const { wide, high, gray } = image;
  return ({ left, right, top, bottom }) => {
    const within = (at: number, most: number) => Math.min(most - 1, Math.max(0, Math.round(at)));
    const [fromX, toX] = [within(left * perPoint, wide), within(right * perPoint, wide)];
    const [fromY, toY] = [within(top * perPoint, high), within(bottom * perPoint, high)];
    let [least, most] = [255, 0];
    for (let y = fromY; y <= toY; y++) {
      for (let x = fromX; x <= toX; x++) {
        const dot = gray[y * wide + x] as number;
        least = Math.min(least, dot);
        most = Math.max(most, dot);
      }
    }
    return most - least >= apart;
  };
}

/** Points at the foot of a page in which nothing stands but its last line. */
const footMargin = 0.6 * 72;

/** The words that are seen: a chart that begins a page is named, but not drawn, at the foot of the one before it too. */
function drawn(page: PrintedPage): readonly Word[] {
  const foot = page.words.findLast(({ text }) => text === "Page")?.bottom;
  return page.words.filter(
    (word) => page.inked(word) && (word.bottom < page.high - footMargin || word.bottom === foot),
  );
}

const letters = /[\p{L}\p{N}]/u;

/** Do the letters run up or down the page, as those beside an axis? */
const isTurned = ({ text, left, right, top, bottom }: Word): boolean =>
  [...text].length > 1 && bottom - top > 1.6 * (right - left);

/** Words that are drawn beyond what the page shows of them: a cell cuts them at its edge. */
export function cutWords({ words, inked }: PrintedPage): Word[] {
  return words.filter((word) => {
    const { text, left, right, top, bottom } = word;
    if (!letters.test(text) || isTurned(word)) return false;
    const [wide, high] = [(right - left) / [...text].length, bottom - top];
    // the low letters of a line stand between four and seven tenths of its height
    const upper = { left, right, top: top + 0.3 * high, bottom: top + 0.5 * high };
    const lower = { left, right, top: top + 0.5 * high, bottom: top + 0.75 * high };
    const tall = { top: top + 0.15 * high, bottom: bottom - 0.15 * high };
    const first = { ...tall, left, right: left + 1.5 * wide };
    const last = { ...tall, left: right - 1.5 * wide, right };
    return ![upper, lower, first, last].every(inked);
  });
}

/** Pairs of words that lie over one another. */
export function overlapping({ words }: PrintedPage): [Word, Word][] {
  const sorted = [...words].sort((a, b) => a.left - b.left);
  const found: [Word, Word][] = [];
  for (const [i, one] of sorted.entries()) {
    for (const other of sorted.slice(i + 1)) {
      if (other.left > one.right - 1) break;
      // lines stand closer than their boxes are high
      const shared = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
      const least = Math.min(one.bottom - one.top, other.bottom - other.top);
      if (shared > 0.4 * least) found.push([one, other]);
    }
  }
  return found;
}

/** Words in lines, from the top down, as they are read. */
export function linesOf({ words }: PrintedPage): string[] {
  const lines: { middle: number; words: Word[] }[] = [];
  for (const word of words) {
    const middle = (word.top + word.bottom) / 2;
    const line = lines.find((one) => Math.abs(one.middle - middle) < 3);
    if (line === undefined) lines.push({ middle, words: [word] });
    else line.words.push(word);
  }
  return lines
    .sort((a, b) => a.middle - b.middle)
    .map((line) => line.words.sort((a, b) => a.left - b.left))
    .map((line) => line.map(({ text }) => text).join(" "));
}

/** What the foot of a page says that is not handed out. */
const officeOnly = /^Office only: /;

/** Which sheet a page is of, and which of its pages, as its foot says: `Job … Falls … Page 1`. */
export function sheetOf({ words }: PrintedPage): { sheet: string; place: number } | undefined {
  const [number, page] = [words.findLast(({ text }) => /^\d+$/.test(text)), "Page"];
  const mark = words.findLast(({ text, bottom }) => text === page && bottom === number?.bottom);
  if (mark === undefined || number === undefined) return undefined;
  const foot = words.filter(({ top }) => Math.abs(top - mark.top) < 0.5);
  const sheet = foot.filter(({ left, right }) => left > mark.left / 3 && right < mark.left - 20);
  const named = sheet.map(({ text }) => text).join(" ");
  return { sheet: named.replace(officeOnly, ""), place: Number(number.text) };
}

/** Letters and figures that follow one another, whatever stands between them. */
export const tokensOf = (text: string): string[] => text.match(/[\p{L}\p{N}]+/gu) ?? [];
