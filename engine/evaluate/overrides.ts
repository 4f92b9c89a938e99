import {
  CellError,
  type ConfigParams,
  ErrorType,
  FunctionArgumentType,
  type FunctionMetadata,
  FunctionPlugin,
  HyperFormula,
} from "hyperformula";
import { fromJudge, type JudgeValue, toJudge } from "./judge-values.js";
import { type NativeFunction, natives } from "./natives/index.js";

/** How hyperformula is set up to calculate as spreadsheet programs do. */
export const judgeOptions: Partial<ConfigParams> = {
  licenseKey: "gpl-v3",
  // Without it SUMPRODUCT((range=x)*range) is wrong, and silent about it.
  useArrayArithmetic: true,
  // Smart rounding would cut every result to 10 digits.
  smartRounding: false,
  evaluateNullToZero: true,
  ignoreWhiteSpace: "any",
  // Otherwise "e" and "é" are the same.
  accentSensitive: true,
  leapYear1900: true,
  nullDate: { year: 1899, month: 12, day: 31 },
  localeLang: "en-US",
};

const value = { argumentType: FunctionArgumentType.NOERROR };
const range = { argumentType: FunctionArgumentType.RANGE };
const either = { argumentType: FunctionArgumentType.ANY };

type Parameter = { argumentType: FunctionArgumentType };

/** `repeated` of the last parameters may come again and again. */
const shape = (parameters: Parameter[], repeated = 0): FunctionMetadata => ({
  method: "native",
  parameters,
  ...(repeated > 0 && { repeatLastArgs: repeated }),
});

/**
 * The functions that hyperformula 3.5.0 lacks or gets wrong, with an example of what it gives.
 * Its own are kept wherever they are right, as a second opinion on ours.
 */
export const overrides: Readonly<Record<string, FunctionMetadata>> = {
  // unknown
  FIXED: shape([value, value]),
  // 3.14159265358979
  PI: shape([]),
  // INT(-8.5) = -8
  INT: shape([value]),
  // ROUND(1.005, 2) = 1
  ROUND: shape([value, value]),
  // ROUNDUP(100*1.1, 0) = 111
  ROUNDUP: shape([value, value]),
  // ROUNDDOWN(4.35*100, 0) = 434
  ROUNDDOWN: shape([value, value]),
  // CEILING(100*1.1, 1) = 111
  CEILING: shape([value, value]),
  // FLOOR(7.1, 0.1) = 7
  FLOOR: shape([value, value]),
  // MOD(1, 0.1) = 0.1
  MOD: shape([value, value]),
  // AND(TRUE, blank) = FALSE; a text in the range = #VALUE!
  AND: shape([either], 1),
  OR: shape([either], 1),
  // TRUE counts as 1
  SUMPRODUCT: shape([range], 1),
  // a blank criterion = #VALUE!
  COUNTIF: shape([range, value]),
  COUNTIFS: shape([range, value], 2),
  MAXIFS: shape([range, range, value], 2),
  MINIFS: shape([range, range, value], 2),
  // a row of cells = #NUM!
  INDEX: shape([range, value]),
  // MATCH("é", {"e"}, 0) = 1
  MATCH: shape([value, range, value]),
  // CHOOSE(3, 1, 2) = #NUM!
  CHOOSE: {
    method: "choose",
    parameters: [
      { argumentType: FunctionArgumentType.NUMBER },
      { argumentType: FunctionArgumentType.SCALAR },
    ],
    repeatLastArgs: 1,
  },
  // CHAR(150) is a control character
  CHAR: shape([value]),
  // SUBSTITUTE("aaa", "", "x") = xaxaxax
  SUBSTITUTE: shape([value, value, value]),
  // YEAR(0) = 1899
  YEAR: shape([value]),
  MONTH: shape([value]),
  DAY: shape([value]),
  // 10 digits only: BINOM.DIST(300, 600, 0.5, TRUE) = 0.5162799657
  "BINOM.DIST": shape([value, value, value, value]),
  "NORM.S.INV": shape([value]),
};

type RunFunction = Parameters<FunctionPlugin["runFunction"]>;

class NativeFunctions extends FunctionPlugin {
  static override implementedFunctions = { ...overrides };

  /** Runs our function of the name that the formula calls. */
  native(call: { procedureName: string; args: RunFunction[0] }, state: RunFunction[1]) {
    const run = natives.get(call.procedureName) as NativeFunction;
    const metadata = this.metadata(call.procedureName);
    return this.runFunction(call.args, state, metadata, (...args: unknown[]) =>
      toJudge(() => run(args.map(fromJudge))),
    );
  }

  /** Not among ours, since an error among the options not chosen does not count. */
  choose(call: { args: RunFunction[0] }, state: RunFunction[1]) {
    return this.runFunction(
      call.args,
      state,
      this.metadata("CHOOSE"),
      (place: number, ...options: JudgeValue[]) =>
        options[Math.trunc(place) - 1] ?? new CellError(ErrorType.VALUE),
    );
  }
}

/** Puts our functions into hyperformula, for the whole process; calling it again changes nothing. */
export function registerOverrides(): void {
  if (HyperFormula.getFunctionPlugin("FIXED") === NativeFunctions) return;
  const names = Object.fromEntries(Object.keys(overrides).map((name) => [name, name]));
  HyperFormula.registerFunctionPlugin(NativeFunctions, { enGB: names });
}
