/** Days from 1899-12-30, as spreadsheets count dates after February 1900. */
const epoch = Date.UTC(1899, 11, 30);
const dayLength = 86_400_000;

/** The serial number of a date written `2026-11-25`; undefined where it is no such date. */
export function serialOf(written: string): number | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(written);
  if (match === null) return undefined;
  const time = Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3]));
  return new Date(time).toISOString().slice(0, 10) === written
    ? Math.round((time - epoch) / dayLength)
    : undefined;
}

/** `2026-11-25`, from its serial number. */
export function writtenDate(serial: number): string {
  return new Date(epoch + Math.floor(serial) * dayLength).toISOString().slice(0, 10);
}

const inEnglish = new Intl.DateTimeFormat("en-US", { dateStyle: "long", timeZone: "UTC" });

/** `November 25, 2026`, of a date written `2026-11-25`, as paper says it; what is no such date stays as it is. */
export function dateInWords(written: string): string {
  return serialOf(written) === undefined
    ? written
    : inEnglish.format(new Date(`${written}T00:00:00Z`));
}

/** The day that it is here and now, `2027-05-31`. */
export function today(): string {
  const now = new Date();
  const minutes = now.getTime() / 60_000 - now.getTimezoneOffset();
  return writtenDate((serialOf("1970-01-01") as number) + minutes / 1440);
}
