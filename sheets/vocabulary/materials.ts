import { columnOf, count, date, formula, length, money, number, precise, text } from "../../engine/template/index.js";

const LOADS = formula(
  "LOADS",
  "Truck loads, in parts, of what comes by the load and is counted in one unit; row by row",
  { by_load: number, unit: text, quantity: number, counted: text, holds: number },
  number,
  "by_load*(unit=counted)*quantity/MAX(0.01,holds)",
  "definition",
);

const ENDED = formula(
  "ENDED",
  "How many prices of what is bought end before a day",
  { costs: columnOf(money), until: columnOf(date), day: date },
  count,
  "SUMPRODUCT((costs>0)*(until<day))",
  "definition",
);

const LINE_JOINTS = formula(
  "LINE_JOINTS",
  "Joints to cement in a line, without its tee and bushing; row by row",
  { elbows_90: count, elbows_45: count, stop: text, length },
  number,
  '2*(1+elbows_90+elbows_45+1*(stop="check valve"))+length/20[ft]',
  "two for each valve and elbow, one for each 20 ft of pipe: common practice, no source",
);

const UNITS_IN = formula(
  "UNITS_IN",
  "How many of one unit make one of another; 0 where they measure different things",
  { kinds: columnOf(text), sizes: columnOf(precise), names: columnOf(text), one: text, other: text },
  number,
  "IF(one=other,1,IF(PICK(kinds,names,one)=PICK(kinds,names,other),PICK(sizes,names,other)/PICK(sizes,names,one),0))",
  "definition",
);

const RATE_IN = formula(
  "RATE_IN",
  "A rate of the office book in the unit that the sheets need; 0 where the book lacks it or measures something else",
  {
    ...{ values: columnOf(precise), units: columnOf(text), codes: columnOf(text), code: text },
    ...{ kinds: columnOf(text), sizes: columnOf(precise), names: columnOf(text), needed: text },
  },
  precise,
  "IF(LISTED(codes,code),PICK(values,codes,code)*UNITS_IN(kinds,sizes,names,needed,PICK(units,codes,code)),0)",
  "definition",
);

/** Loads, quotes, joints, units. */
export const materialFormulas = [LOADS, ENDED, LINE_JOINTS, UNITS_IN, RATE_IN] as const;
