/** A ticket number as it was written, and the day its reel came in (`YYYY-MM-DD`, null when unknown). */
export interface NumberWritten {
  readonly ticket_no: string;
  readonly received_on: string | null;
}

interface Parts {
  /** What stands before and after the running number, with the year of the ticket as `{Y}` or `{y}`. */
  readonly shape: string;
  readonly year: string;
  readonly digits: string;
  readonly no: number;
}

/** In an empty shop. */
const FIRST = "0001";
/** Longer runs of digits cannot be counted on exactly. */
const MOST_DIGITS = 15;

/** The last run of digits is the running number, as in `R-1041`, `25-0312` or `J77b`. */
function partsOf({ ticket_no, received_on }: NumberWritten): Parts | null {
  const found = /^(.*?)(\d+)(\D*)$/.exec(ticket_no.trim()), digits = found?.[2] ?? "";
  if (!found || digits.length > MOST_DIGITS) return null;
  const year = received_on?.slice(0, 4) ?? "", before = found[1] ?? "", after = found[3] ?? "";
  const yearless = year === "" ? before : before.includes(year) ? before.replace(year, "{Y}") : before.replace(new RegExp(`(?<!\\d)${year.slice(2)}(?!\\d)`), "{y}");
  return { shape: `${yearless}\u0000${after}`, year, digits, no: Number(digits) };
}

const most = (all: readonly Parts[]): string | undefined => {
  const counts = new Map<string, number>();
  for (const { shape } of all) counts.set(shape, (counts.get(shape) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
};

/** With a year in the number the count may begin anew each year: so it does unless the newest year went on from the one before. */
function counted(own: readonly Parts[], year: string): readonly Parts[] {
  const years = [...new Set(own.map((one) => one.year))].sort(), last = years.at(-1) ?? year, before = years.at(-2);
  const of = (which: string) => own.filter((one) => one.year === which).map(({ no }) => no);
  const goes_on = before !== undefined && Math.min(...of(last)) > Math.max(...of(before));
  return goes_on ? own : own.filter((one) => one.year === year);
}

/**
 * The number the next ticket would get in the shop's own way of numbering: the shape most of the last tickets have, counted on.
 *
 * @param last the last tickets of the records and those at the bench, newest first
 * @param today `YYYY-MM-DD`
 * @example
 * nextTicketNumber([{ ticket_no: "R-1041", received_on: "2026-03-02" }], "2026-03-03") // => "R-1042"
 */
export function nextTicketNumber(last: readonly NumberWritten[], today: string): string {
  const parts = last.flatMap((one) => partsOf(one) ?? []), shape = most(parts), year = today.slice(0, 4);
  if (shape === undefined) return FIRST;
  const own = parts.filter((one) => one.shape === shape), has_year = /\{[Yy]\}/.test(shape);
  const from = has_year ? counted(own, year) : own;
  const no = Math.max(0, ...from.map((one) => one.no)) + 1, digits = String(no).padStart(own[0]?.digits.length ?? 0, "0");
  const [before = "", after = ""] = shape.split("\u0000");
  return `${before.replace("{Y}", year).replace("{y}", year.slice(2))}${digits}${after}`;
}
