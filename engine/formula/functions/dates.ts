import { plain, type Type } from "../type.js";
import { countAt, ensure, numberAt } from "./arguments.js";
import { type NativeFunction, native } from "./description.js";
import { takes } from "./rules.js";

const dayLength = 86_400_000;
const dayZero = Date.UTC(1899, 11, 31);

/** 31 December 9999. */
const lastSerial = 2_958_465;

/** The day that never was, 29 February 1900, which the 1900 date system counts. */
const phantom = 60;

/** The serial number of the first day of a month, months counted from 0 and free to run over. */
function monthStart(year: number, month: number): number {
  const days = (Date.UTC(year, month, 1) - dayZero) / dayLength;
  return days < phantom ? days : days + 1;
}

const date: NativeFunction = (args) => {
  const given = countAt(args, 0);
  const year = given >= 0 && given < 1900 ? given + 1900 : given;
  ensure(year >= 1900 && year <= 9999);
  const serial = monthStart(year, countAt(args, 1) - 1) + countAt(args, 2) - 1;
  ensure(serial >= 0 && serial <= lastSerial);
  return serial;
};

/** Year, month and day of a serial number; serial 0 is day 0 of January 1900. */
function calendar(serial: number): readonly [number, number, number] {
  ensure(serial >= 0 && serial < lastSerial + 1);
  const days = Math.floor(serial);
  if (days === 0) return [1900, 1, 0];
  if (days === phantom) return [1900, 2, 29];
  const at = new Date(dayZero + (days < phantom ? days : days - 1) * dayLength);
  return [at.getUTCFullYear(), at.getUTCMonth() + 1, at.getUTCDate()];
}

const day: Type = { kind: "number", dimension: { time: 1 }, size: 86400, range: false };

const partOfDay = (name: string, part: 0 | 1 | 2, since: string) =>
  native(name, [1], {
    check: takes([day], plain),
    run: (args) => calendar(numberAt(args, 0))[part],
    judge: { takes: ["value"], since },
  });

/** Dates as serial numbers of the 1900 date system (ISO/IEC 29500-1 §18.17.4.1, from memory). */
export const dates = [
  native("DATE", [3], { check: takes([plain], day), run: date }),
  partOfDay("YEAR", 0, "YEAR(0) = 1899"),
  partOfDay("MONTH", 1, "as YEAR"),
  partOfDay("DAY", 2, "as YEAR"),
];
