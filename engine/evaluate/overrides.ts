import {
  CellError,
  type ConfigParams,
  ErrorType,
  FunctionArgumentType,
  type FunctionMetadata,
  FunctionPlugin,
  HyperFormula,
} from "hyperformula";
import type { JudgeArgument } from "../formula/functions/description.js";
import { type NativeFunction, natives } from "../formula/functions/index.js";
import { fromJudge, type JudgeValue, toJudge } from "./judge-values.js";

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
  // As many as a workbook has: by itself 40,000, and many jobs together ask more than so many questions.
  maxRows: 1048576,
  // a text is never compared as the date that it may read as
  parseDateTime: () => undefined,
};

const argumentTypes: Readonly<Record<JudgeArgument, FunctionArgumentType>> = {
  value: FunctionArgumentType.NOERROR,
  range: FunctionArgumentType.RANGE,
  either: FunctionArgumentType.ANY,
  number: FunctionArgumentType.NUMBER,
  scalar: FunctionArgumentType.SCALAR,
};

/**
 * The functions that hyperformula 3.5.0 lacks or gets wrong, as their descriptions tell it.
 * Its own are kept wherever they are right, as a second opinion on ours.
 */
export const overrides: Readonly<Record<string, FunctionMetadata>> = Object.fromEntries(
  [...natives.values()].flatMap(({ name, run, judge }) => {
    if (judge === undefined) return [];
    const { takes, again } = judge;
    const metadata: FunctionMetadata = {
      method: run === undefined ? "choose" : "native",
      parameters: takes.map((kind) => ({ argumentType: argumentTypes[kind] })),
      ...(again === undefined ? {} : { repeatLastArgs: again }),
    };
    return [[name, metadata]];
  }),
);

type RunFunction = Parameters<FunctionPlugin["runFunction"]>;

class NativeFunctions extends FunctionPlugin {
  static override implementedFunctions = { ...overrides };

  /** Runs our function of the name that the formula calls. */
  native(call: { procedureName: string; args: RunFunction[0] }, state: RunFunction[1]) {
    const run = natives.get(call.procedureName)?.run as NativeFunction;
    const metadata = this.metadata(call.procedureName);
    return this.runFunction(call.args, state, metadata, (...args: unknown[]) =>
      toJudge(() => run(args.map(fromJudge))),
    );
  }

  /** CHOOSE has none of ours to run, since an error among the options not chosen does not count. */
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
