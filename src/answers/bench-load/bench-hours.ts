/** One person at the bench. */
export interface BenchPerson { readonly name: string; readonly hours_a_week: number }

/** Who works at the bench, as the owner wrote it. */
export interface BenchHours { readonly people: readonly BenchPerson[] }

/** Name of the ledger's setting that keeps the hours, as JSON. */
export const BENCH_HOURS_SETTING = "bench hours";
export const NO_HOURS: BenchHours = { people: [] };

/** Minutes beside the work where the owner wrote none; common practice, no source. */
export const USUAL_OVERHEAD = 15;
const LONGEST_WEEK = 168;

function person(one: unknown): BenchPerson | string {
  if (typeof one !== "object" || one === null) return "a person is not written as one";
  const { name, hours_a_week } = one as Record<string, unknown>;
  if (typeof name !== "string" || name.trim() === "" || name.length > 40) return "a person needs a name of 1 to 40 letters";
  if (typeof hours_a_week !== "number" || !(hours_a_week > 0 && hours_a_week <= LONGEST_WEEK)) return `the hours of ${name} must be over 0 and at most ${LONGEST_WEEK} a week`;
  return { name: name.trim(), hours_a_week };
}

function hours(one: unknown): BenchHours | string {
  if (typeof one !== "object" || one === null) return "they are not written as hours";
  const { people } = one as Record<string, unknown>;
  if (!Array.isArray(people)) return "the people are not a list";
  const read = people.map(person), fault = read.find((each) => typeof each === "string");
  if (fault !== undefined) return fault as string;
  const known = read.filter((each) => typeof each !== "string");
  if (new Set(known.map(({ name }) => name)).size < known.length) return "two people bear one name";
  return { people: known };
}

/** The hours as they were kept; what cannot be read is named, and none are taken then. */
export function readBenchHours(kept: string | null): { hours: BenchHours; faults: readonly string[] } {
  if (kept === null || kept === "") return { hours: NO_HOURS, faults: [] };
  let read: BenchHours | string;
  try {
    read = hours(JSON.parse(kept));
  } catch {
    read = "what is kept is damaged";
  }
  return typeof read === "string" ? { hours: NO_HOURS, faults: [`The bench's hours cannot be read: ${read}.`] } : { hours: read, faults: [] };
}

/**
 * The hours as text for the ledger's setting.
 *
 * @throws {RangeError} if a person has no name or no hours, or two bear one name
 */
export function benchHoursText(written: BenchHours): string {
  const read = hours(written);
  if (typeof read === "string") throw new RangeError(`benchHoursText: ${read}`);
  return JSON.stringify(read);
}

/** Hours of a usual week; null where nobody is written. */
export const hoursAWeek = ({ people }: BenchHours): number | null => (people.length === 0 ? null : people.reduce((sum, { hours_a_week }) => sum + hours_a_week, 0));
