import { EmptyValue, ErrorType, CellError as JudgeError, SimpleRangeValue } from "hyperformula";
import { type Argument, CellError, type ErrorCode, type Value } from "../formula/value.js";

/** What hyperformula hands to a function and takes from it. */
export type JudgeValue =
  | number
  | string
  | boolean
  | typeof EmptyValue
  | JudgeError
  | SimpleRangeValue;

const judgeErrors: Readonly<Record<ErrorCode, ErrorType>> = {
  "#DIV/0!": ErrorType.DIV_BY_ZERO,
  "#N/A": ErrorType.NA,
  "#NAME?": ErrorType.NAME,
  "#NULL!": ErrorType.ERROR,
  "#NUM!": ErrorType.NUM,
  "#REF!": ErrorType.REF,
  "#VALUE!": ErrorType.VALUE,
  "#CYCLE!": ErrorType.CYCLE,
};

const ourErrors: ReadonlyMap<ErrorType, ErrorCode> = new Map(
  Object.entries(judgeErrors).map(([code, type]) => [type, code as ErrorCode]),
);

/** An error of hyperformula on its way through one of our functions: it keeps where it arose. */
class PassedError extends CellError {
  constructor(readonly error: JudgeError) {
    super(ourErrors.get(error.type) ?? "#VALUE!");
  }
}

/** Numbers with a format (dates, amounts of money) come as objects that hold the number. */
function plain(given: unknown): Value {
  if (given === EmptyValue) return null;
  // the most of all, since each formula that looks through a column hands it over
  if (typeof given !== "object" || given === null) return given as Value;
  if (given instanceof JudgeError) return new PassedError(given);
  return "val" in given ? (given.val as number) : (given as unknown as Value);
}

/** hyperformula's argument as ours: a range row by row. */
export function fromJudge(given: unknown): Argument {
  if (!(given instanceof SimpleRangeValue)) return plain(given);
  const values: Value[] = [];
  for (const row of given.data) for (const one of row) values.push(plain(one));
  return values;
}

/** Runs `calculate` and gives its value, or the error it throws, as hyperformula's. */
export function toJudge(calculate: () => Value): JudgeValue {
  try {
    const value = calculate();
    if (value instanceof CellError) throw value;
    return value === null ? EmptyValue : value;
  } catch (error) {
    if (error instanceof PassedError) return error.error;
    if (error instanceof CellError) return new JudgeError(judgeErrors[error.code]);
    throw error;
  }
}
