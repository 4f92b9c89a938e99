import fc from "fast-check";

/**
 * Random formulas that keep to the rules of kind and unit, over the names of
 * `evaluators.test.ts`: numbers n_a …, columns of rows, texts, yes/no.
 */
const numbers = ["n_a", "n_b", "n_zero", "n_blank", "n_bad", "n_missing"];
const columns = ["rows.x", "rows.y", "rows.x", "rows.y", "cracked.v", "cracked.w"];
const texts = ["s_a", "s_b"];

const literal = fc
  .oneof(
    fc.integer({ min: -50, max: 50 }),
    fc.double({ min: -100, max: 100, noNaN: true }).map((x) => Number(x.toFixed(4))),
    fc.constantFrom(0, 1, 2, 0.5, 1e-7, 1e6),
  )
  .map((value) => (value < 0 ? `(${value})` : String(value)));

const quoted = fc
  .constantFrom("", "a", "Oak", "oak", "x y", "12", 'say ""so""', "Ü", "=1+1", " pad  ded ")
  .map((text) => `"${text}"`);

interface Kinds {
  number: string;
  text: string;
  yesno: string;
  rowwise: string;
}

const made = fc.letrec<Kinds>((tie) => {
  const part = (kind: keyof Kinds) => tie(kind) as fc.Arbitrary<string>;
  const [n, s, b, r] = [part("number"), part("text"), part("yesno"), part("rowwise")] as const;
  const two = (join: (a: string, b: string) => string) =>
    fc.tuple(n, n).map(([x, y]) => join(x, y));
  const column = fc.constantFrom(...columns);
  return {
    number: fc.oneof(
      { maxDepth: 4, depthSize: "small" },
      literal,
      fc.constantFrom(...numbers),
      fc
        .tuple(fc.constantFrom("+", "-", "*", "/"), n, n)
        .map(([operator, x, y]) => `(${x}${operator}${y})`),
      fc.tuple(n, fc.constantFrom(0, 1, 2, 3, 0.5)).map(([x, y]) => `(${x})^${y}`),
      n.map((x) => `(-${x})`),
      n.map((x) => `(${x})%`),
      fc.tuple(b, n, n).map(([c, x, y]) => `IF(${c},${x},${y})`),
      two((x, y) => `MIN(${x},${y},rows.x)`),
      two((x, y) => `MAX(${x},SUM(rows.y),${y})`),
      two((x, y) => `CHOOSE(MOD(INT(ABS(${x})),4),${y},2,3)`),
      fc.tuple(fc.constantFrom("ABS", "INT", "SIGN", "ATAN"), n).map(([f, x]) => `${f}(${x})`),
      n.map((x) => `SQRT(ABS(${x}))`),
      n.map((x) => `SQRT(${x})`),
      fc.tuple(n, fc.integer({ min: -1, max: 4 })).map(([x, d]) => `ROUND(${x},${d})`),
      n.map((x) => `ROUNDUP(ROUND(${x},6),0)`),
      two((x, y) => `MOD(${x},${y})`),
      fc.tuple(fc.constantFrom("SUM", "MIN", "MAX"), column).map(([f, c]) => `${f}(${c})`),
      fc.tuple(column, fc.integer({ min: 0, max: 6 })).map(([c, k]) => `LARGE(${c},${k})`),
      // calculated: a row written out must be one that the table has
      fc.tuple(column, n).map(([c, x]) => `INDEX(${c},0+${x})`),
      fc.tuple(n, column).map(([x, c]) => `MATCH(${x},${c},0)`),
      s.map((x) => `MATCH(${x},rows.name,0)`),
      fc.tuple(column, n).map(([c, x]) => `COUNT_WHERE(${c},${x})`),
      fc.tuple(s, column).map(([x, c]) => `SUM_WHERE(${c},rows.name,${x})`),
      fc.tuple(s, column).map(([x, c]) => `PICK(${c},rows.name,${x})`),
      fc.tuple(n, column, n).map(([x, c, y]) => `PICK_OR(${c},rows.y,${x},${y})`),
      n.map((x) => `PLACE_OR_ZERO(rows.x,${x})`),
      fc
        .tuple(fc.constantFrom("LARGEST_WHERE", "LEAST_WHERE"), n)
        .map(([f, x]) => `${f}(cracked.w,rows.x,${x})`),
      r.map((x) => `SUMPRODUCT(${x})`),
      s.map((x) => `LEN(${x})`),
    ),
    /** Arithmetic on columns, for SUMPRODUCT. */
    rowwise: fc.oneof(
      { maxDepth: 3, depthSize: "small" },
      column.map((c) => `(${c}*1)`),
      fc.tuple(fc.constantFrom("+", "-", "*"), column, r).map(([o, c, x]) => `(${c}${o}${x})`),
      fc
        .tuple(fc.constantFrom(">", "<=", "=", "<>"), column, n)
        .map(([o, c, x]) => `((${c}${o}${x})*1)`),
      fc.tuple(s, column).map(([x, c]) => `((rows.name=${x})*${c})`),
      fc.tuple(n, column).map(([x, c]) => `(${x}*${c})`),
      column.map((c) => `(-${c})`),
    ),
    text: fc.oneof(
      { maxDepth: 3, depthSize: "small" },
      quoted,
      fc.constantFrom(...texts),
      fc.tuple(s, s).map(([x, y]) => `(${x}&${y})`),
      fc.tuple(n, fc.integer({ min: 0, max: 3 })).map(([x, d]) => `FIXED(${x},${d})`),
      fc.tuple(b, s, s).map(([c, x, y]) => `IF(${c},${x},${y})`),
      fc.tuple(fc.constantFrom("UPPER", "LOWER", "TRIM"), s).map(([f, x]) => `${f}(${x})`),
      fc
        .tuple(fc.constantFrom("LEFT", "RIGHT"), s, fc.nat(4))
        .map(([f, x, k]) => `${f}(${x},${k})`),
      fc
        .tuple(s, fc.integer({ min: 1, max: 4 }), fc.nat(3))
        .map(([x, k, l]) => `MID(${x},${k},${l})`),
      s.map((x) => `SUBSTITUTE(${x},"a","bb")`),
      s.map((x) => `TEXTJOIN("-",TRUE,${x},rows.name)`),
      n.map((k) => `INDEX(rows.name,0+${k})`),
    ),
    yesno: fc.oneof(
      { maxDepth: 3, depthSize: "small" },
      fc.constantFrom("TRUE", "FALSE", "b_a"),
      fc
        .tuple(fc.constantFrom("<", "<=", ">", ">=", "=", "<>"), n, n)
        .map(([o, x, y]) => `(${x}${o}${y})`),
      fc.tuple(fc.constantFrom("=", "<>", "<", ">="), s, s).map(([o, x, y]) => `(${x}${o}${y})`),
      fc.tuple(fc.constantFrom("AND", "OR"), b, b).map(([f, x, y]) => `${f}(${x},${y})`),
      b.map((x) => `NOT(${x})`),
      fc.constantFrom(...numbers.filter((x) => !/[0-9]/.test(x))).map((x) => `ISNUMBER(${x})`),
      s.map((x) => `LISTED(rows.name,${x})`),
      fc.constantFrom(...numbers).map((x) => `ISBLANK(${x})`),
    ),
  };
});

export const anyNumber = made.number;
export const anyText = made.text;
export const anyYesno = made.yesno;
