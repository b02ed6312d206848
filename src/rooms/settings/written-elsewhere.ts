import { BENCH_HOURS_SETTING, readBenchHours } from "../../answers/bench-load/bench-hours.ts";
import { BENCH_CALENDAR_SETTING, readClosures } from "../../answers/season/bench-calendar.ts";
import type { BenchStore } from "../../records/bench-log/bench-store.ts";
import type { Ledger } from "../../records/ledger/ledger.ts";
import { spellingsFrom, SPELLING_SETTING } from "../../records/notes/spellings-text.ts";
import { whatIsKnown } from "../../records/understanding/what-is-known.ts";

/** Counts of what is written in other rooms, to say what a setting stands at. */
export interface Elsewhere {
  readonly people: number;
  /** Of all people together, in a usual week. */
  readonly hours_a_week: number;
  readonly closures: number;
  readonly spellings: number;
  /** Shapes of file whose answers are kept. */
  readonly shapes: number;
  readonly photos: number;
}

/** Reads what is written in other rooms. */
export async function writtenElsewhere(ledger: Ledger, bench: BenchStore): Promise<Elsewhere> {
  const kept = await ledger.settings(), { people } = readBenchHours(kept[BENCH_HOURS_SETTING] ?? null).hours;
  const photos = await Promise.all((await bench.tickets()).map(async ({ id }) => (await bench.photos(id)).length));
  return {
    people: people.length, hours_a_week: people.reduce((sum, one) => sum + one.hours_a_week, 0),
    closures: readClosures(kept[BENCH_CALENDAR_SETTING] ?? null).closures.length,
    spellings: spellingsFrom(kept[SPELLING_SETTING] ?? null).entries.length,
    shapes: (await whatIsKnown(ledger)).remembered.length, photos: photos.reduce((sum, one) => sum + one, 0),
  };
}
