import { count, flow, formula, head, hourlyFlow, number, power, precise, yesno } from "../../engine/template/index.js";

const book = "the office book's curve: up to eight points side by side in a row, used from the first on";
const line = "straight line between the points of the office book";

const each = <T>(name: string, measure: T, last = 8): Record<string, T> =>
  Object.fromEntries(Array.from({ length: last }, (_, i) => [`${name}_${i + 1}`, measure]));

const summed = (of: (point: number) => string): string => Array.from({ length: 8 }, (_, i) => of(i + 1)).join("+");

const FLOW_GIVEN = formula(
  "FLOW_GIVEN",
  "1 for a flow that is filled in",
  { q: hourlyFlow },
  count,
  "IF(ISBLANK(q),0,1)",
  book,
);

const FLOWS_GIVEN = formula(
  "FLOWS_GIVEN",
  "How many flows of a curve are filled in; one in error counts, and shows as an error where it is used",
  each("q", hourlyFlow),
  count,
  summed((k) => `FLOW_GIVEN(q_${k})`),
  book,
);

const HEAD_GIVEN = formula(
  "HEAD_GIVEN",
  "1 for a head that is filled in",
  { h: head },
  count,
  "IF(ISBLANK(h),0,1)",
  book,
);

const HEADS_GIVEN = formula(
  "HEADS_GIVEN",
  "How many heads of a curve are filled in; one in error counts, and shows as an error where it is used",
  each("h", head),
  count,
  summed((k) => `HEAD_GIVEN(h_${k})`),
  book,
);

const FLOWS_RISE = formula(
  "FLOWS_RISE",
  "Does each flow of a curve go over the one before it?",
  { n: count, ...each("q", hourlyFlow) },
  yesno,
  `AND(${[2, 3, 4, 5, 6, 7, 8].map((k) => `OR(n<${k},q_${k}>q_${k - 1})`).join(",")})`,
  book,
);

const HEADS_FALL = formula(
  "HEADS_FALL",
  "Does each head of a curve stay under the one before it?",
  { n: count, ...each("h", head) },
  yesno,
  `AND(${[2, 3, 4, 5, 6, 7, 8].map((k) => `OR(n<${k},h_${k}<h_${k - 1})`).join(",")})`,
  book,
);

const UP_TO = formula(
  "UP_TO",
  "1 for a point that is filled in and lies at a flow or under it; a hair over it counts, so that a tie is one in every program",
  { n: count, k: number, at: flow, q: hourlyFlow },
  count,
  "IF(AND(n>=k,q<=at+0.000001[gal/min]),1,0)",
  book,
);

const POINTS_UP_TO = formula(
  "POINTS_UP_TO",
  "How many points of a curve lie at a flow or under it",
  { n: count, at: flow, ...each("q", hourlyFlow) },
  count,
  summed((k) => `UP_TO(n,${k},at,q_${k})`),
  book,
);

const OVER = formula(
  "OVER",
  "1 for a point over the parabola from the origin through a duty",
  { f: flow, t: head, q: hourlyFlow, h: head },
  count,
  "IF(h*f^2>t*q^2,1,0)",
  "affinity laws: at another speed a point of a curve moves along such a parabola",
);

const POINTS_OVER = formula(
  "POINTS_OVER",
  "How many points of a curve lie over the parabola through a duty; those not filled in lie on it",
  { f: flow, t: head, ...each("q", hourlyFlow), ...each("h", head) },
  count,
  summed((k) => `OVER(f,t,q_${k},h_${k})`),
  "affinity laws: at another speed a point of a curve moves along such a parabola",
);

const PIECE_SLOPE = formula(
  "PIECE_SLOPE",
  "Slope of a straight piece of a curve; 0 where the curve is not sound",
  { sound: yesno, k: count, ...each("q", hourlyFlow), ...each("h", head) },
  "",
  "IF(sound,CURVE_SLOPE(CHOOSE(k,q_1..q_7),CHOOSE(k,h_1..h_7),CHOOSE(k,q_2..q_8),CHOOSE(k,h_2..h_8)),0)",
  line,
);

const PIECE_START = formula(
  "PIECE_START",
  "Head at which a straight piece of a curve would meet zero flow; 0 where the curve is not sound",
  { sound: yesno, k: count, slope: precise, ...each("q", hourlyFlow, 7), ...each("h", head, 7) },
  head,
  "IF(sound,CARRIED_BACK(CHOOSE(k,q_1..q_7),CHOOSE(k,h_1..h_7),slope),0)",
  line,
);

const PIECE_HEAD = formula(
  "PIECE_HEAD",
  "Head at a flow on a straight piece of a curve at full speed; 0 beyond its reach",
  { at: flow, k: count, slope: precise, ...each("q", hourlyFlow, 7), ...each("h", head, 7) },
  head,
  "MAX(0,LINE_HEAD(at,CARRIED_BACK(CHOOSE(k,q_1..q_7),CHOOSE(k,h_1..h_7),slope),slope,1))",
  line,
);

const PIECE_WATTS = formula(
  "PIECE_WATTS",
  "Power at a flow on a straight piece of a curve at full speed",
  { at: flow, k: count, ...each("q", hourlyFlow), ...each("w", power) },
  power,
  "MAX(0,BETWEEN(at,CHOOSE(k,q_1..q_7),CHOOSE(k,q_2..q_8),CHOOSE(k,w_1..w_7),CHOOSE(k,w_2..w_8)))",
  line,
);

/** A pump's curve as it stands in a row of the office book: points counted, pieces found and read. */
export const curveFormulas = [
  FLOW_GIVEN,
  FLOWS_GIVEN,
  HEAD_GIVEN,
  HEADS_GIVEN,
  FLOWS_RISE,
  HEADS_FALL,
  UP_TO,
  POINTS_UP_TO,
  OVER,
  POINTS_OVER,
  PIECE_SLOPE,
  PIECE_START,
  PIECE_HEAD,
  PIECE_WATTS,
];
