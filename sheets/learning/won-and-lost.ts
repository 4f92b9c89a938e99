import {
  calc,
  count,
  lines,
  money,
  percent,
  published,
  type TableBlock,
  table,
  text,
} from "../../engine/template/index.js";

const source = "classes of this template: common practice, no source";
/** Fewer decisions than these tell no share. */
const few = 5;
const none = { decimals: 0, zero: "–" } as const;

/** A share, or nothing where too few bids tell it. */
const told = (formula: string) => `IF(bids<${few},0,${formula})`;

/** Bids of a class: how many were decided, how many won, and between which shares the true one may lie. */
const sharesOf = (column: string) => {
  const inClass = `(decided.${column}>=from)*(decided.${column}<upto)`;
  return {
    bids: calc(count, `SUMPRODUCT(${inClass}*decided.one)`, "Bids decided"),
    won_bids: calc(count, `SUMPRODUCT(${inClass}*decided.one_won)`, "Bids won"),
    share_won: calc(percent, told("won_bids/MAX(1,bids)"), "Share won", none),
    won_low: calc(percent, told("WILSON(won_bids/MAX(1,bids),bids,0-within_normal)"), "True share, from", none),
    won_high: calc(percent, told("WILSON(won_bids/MAX(1,bids),bids,within_normal)"), "True share, to", none),
    won_says: calc(text, `IF(bids<${few},"too few to tell","")`, "Remark"),
  } satisfies TableBlock["columns"];
};

const sizes = [0, 10_000, 20_000, 40_000, 80_000];
const margins = [-9, 0.1, 0.15, 0.2, 0.25, 0.3];

const classes = (edges: readonly number[], last: number, said: (edge: number) => string) =>
  edges.map((from, i) => {
    const upto = edges[i + 1] ?? last;
    const called =
      i === 0 ? `below ${said(upto)}` : upto === last ? `${said(from)} and more` : `${said(from)} to ${said(upto)}`;
    return { called, from, upto };
  });

/** In whole dollars; by hand, since the first call of toLocaleString would take 20 ms at each start of the program. */
const dollars = (edge: number) => `$${String(edge).replace(/\B(?=(\d{3})+$)/g, ",")}`;
const inPercent = (edge: number) => `${Math.round(edge * 100)}%`;

/** Bids by what they came to. */
export const bySize: TableBlock = table(
  "by_size",
  "By price",
  { rows: sizes.length, data: classes(sizes, 1e9, dollars) },
  {
    called: published(text, "Price", { source }),
    from: published(money, "From", { source, working: true }),
    upto: published(money, "Up to", { source, working: true }),
    ...sharesOf("price"),
  },
);

/** Bids by their margin. */
export const byMargin: TableBlock = table(
  "by_margin",
  "By profit margin",
  {
    rows: margins.length,
    data: classes(margins, 9, inPercent),
    note: "Counts, no model: bids of a low margin may be won for other reasons than their price.",
  },
  {
    called: published(text, "Profit margin", { source }),
    from: published(percent, "From", { source, working: true }),
    upto: published(percent, "Up to", { source, working: true }),
    ...sharesOf("margin"),
  },
);

export const wonAndLost = lines("Bids won and lost", {
  decided_count: calc(count, "SUM(decided.one)", "Bids decided"),
  won_count: calc(count, "SUM(decided.one_won)", "Bids won"),
  won_of_all: calc(percent, "won_count/MAX(1,decided_count)", "Share won", { decimals: 0 }),
});
