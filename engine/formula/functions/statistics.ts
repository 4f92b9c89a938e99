import { binomialAt, binomialUpTo } from "../arithmetic/binomial.js";
import { significant } from "../arithmetic/decimal.js";
import { normalInverse } from "../arithmetic/normal.js";
import { toBoolean } from "../arithmetic/operators.js";
import { mostFreedom, studentInverse } from "../arithmetic/student.js";
import { plain, yesnoType } from "../type.js";
import { countAt, ensure, numberAt, valueAt } from "./arguments.js";
import { type NativeFunction, native } from "./description.js";
import { plainOnly, takes } from "./rules.js";

/** More trials than this are refused, or one formula could take seconds. */
const mostTrials = 1_000_000;

const isProbability = (p: number) => p >= 0 && p <= 1;

const binomial: NativeFunction = (args) => {
  const [successes, trials, p] = [countAt(args, 0), countAt(args, 1), numberAt(args, 2)];
  ensure(successes >= 0 && successes <= trials && trials <= mostTrials && isProbability(p));
  return toBoolean(valueAt(args, 3))
    ? binomialUpTo(successes, trials, p, 1 - p)
    : binomialAt(successes, trials, p, 1 - p);
};

/** The smallest count whose cumulative probability, at 15 digits, reaches the one asked for. */
const binomialInverse: NativeFunction = (args) => {
  const [trials, p, asked] = [countAt(args, 0), numberAt(args, 1), numberAt(args, 2)];
  ensure(trials >= 0 && trials <= mostTrials && isProbability(p) && asked > 0 && asked < 1);
  let [low, high] = [0, trials];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (significant(binomialUpTo(middle, trials, p, 1 - p)) >= significant(asked)) high = middle;
    else low = middle + 1;
  }
  return low;
};

const standardNormalInverse: NativeFunction = (args) => {
  const probability = numberAt(args, 0);
  ensure(probability > 0 && probability < 1);
  return normalInverse(probability);
};

/** Two-sided, as the first edition of the file format has it; degrees of freedom without their decimals. */
const studentTwoSided: NativeFunction = (args) => {
  const [chance, freedom] = [numberAt(args, 0), countAt(args, 1)];
  ensure(chance > 0 && chance <= 1 && freedom >= 1 && freedom <= mostFreedom);
  return studentInverse(chance, freedom);
};

/** Distributions; #NUM! for probabilities outside 0 to 1 and counts outside their range. */
export const statistics = [
  native("BINOM.DIST", [4], {
    check: takes([plain, plain, plain, yesnoType], plain),
    prefixed: true,
    run: binomial,
    judge: {
      takes: ["value", "value", "value", "value"],
      since: "10 digits only: BINOM.DIST(300, 600, 0.5, TRUE) = 0.5162799657",
    },
  }),
  native("BINOM.INV", [3], { check: plainOnly, prefixed: true, run: binomialInverse }),
  native("NORM.S.INV", [1], {
    check: plainOnly,
    prefixed: true,
    run: standardNormalInverse,
    judge: { takes: ["value"], since: "10 digits only" },
  }),
  native("TINV", [2], {
    check: plainOnly,
    run: studentTwoSided,
    judge: { takes: ["value", "value"], since: "10 digits only" },
  }),
];
