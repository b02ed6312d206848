import clear from "./clear-ledger.sql?raw";
import numbers from "./derive/0-numbers.sql?raw";
import tickets from "./derive/0-tickets.sql?raw";
import versions from "./derive/0-versions.sql?raw";
import whatCounts from "./derive/0-what-counts.sql?raw";
import catalogue from "./derive/1-catalogue.sql?raw";
import places from "./derive/2-places.sql?raw";
import visits from "./derive/2-visits.sql?raw";
import inspections from "./derive/3-inspections.sql?raw";
import nothingPutOff from "./derive/3-nothing-put-off.sql?raw";
import putOff from "./derive/3-put-off.sql?raw";
import demand from "./derive/4-demand.sql?raw";
import failures from "./derive/4-failures.sql?raw";
import type { Engine } from "./engine.ts";
import nothingSeveral from "./nothing-several.sql?raw";
import schema from "./schema.sql?raw";

/** Positions with a grade of 3 or 4 count as failed unless the shop says otherwise (RECORDS.md, findings). */
const USUAL = { failure_grade: 3 };
type Settings = typeof USUAL;

/** What settles ticket numbers that several rows bear. */
const SETTLING = [versions, tickets, whatCounts];

/** What the orders of the day need, and what they do not. */
const FIRST = [catalogue, visits, demand], REST = [places, inspections, failures];

function graded({ failure_grade }: Settings): Settings {
  if (![1, 2, 3, 4].includes(failure_grade)) throw new RangeError(`derive: failure_grade must be 1, 2, 3 or 4, got ${failure_grade}`);
  return { failure_grade };
}

/** Without such numbers, now and before, the empty tables stay as they are: making them anew takes as long as a small derivation. */
const ANY_SEVERAL = `-- Whether a ticket number has several rows, or had.
select exists (select 1 from several) or exists (select 1 from versions) as any_several`;

const PUT_OFF = `-- What waits to be derived, and by which grade.
-- Columns: failure_grade integer
select failure_grade
from put_off
order by failure_grade`;

/** Makes the tables of imported rows, empty; the derived ones are there after the first `derive`. What was there is gone. */
export async function prepareTables(engine: Engine): Promise<void> {
  await engine.run([schema, nothingSeveral, whatCounts]);
}

/** Makes all tables, the derived ones too, empty; what was there is gone. */
export async function prepareSchema(engine: Engine): Promise<void> {
  await engine.run([schema, numbers, ...SETTLING, ...FIRST, ...REST], USUAL);
}

/** Empties `ledger.*`; the derived tables stay as they are until `derive`. */
export async function clearImported(engine: Engine): Promise<void> {
  await engine.run([clear]);
}

/** Derives what `scripts` make, from the imported rows and what is settled among them. */
async function derived(engine: Engine, scripts: readonly string[], values: Settings): Promise<void> {
  await engine.transaction(async (inside) => {
    await inside.run([numbers, nothingPutOff]);
    const [found] = await inside.rows<{ any_several: boolean }>(ANY_SEVERAL);
    await inside.run([...(found?.any_several ? SETTLING : []), ...scripts], { ...values });
  });
}

/**
 * Makes the derived tables anew from `ledger.*`, all or none.
 *
 * @param settings `failure_grade`: the grade from which a position counts as failed
 * @throws {RangeError} if `failure_grade` is not one of 1, 2, 3, 4
 */
export async function derive(engine: Engine, settings: Settings = USUAL): Promise<void> {
  await derived(engine, [...FIRST, ...REST], graded(settings));
}

/**
 * Makes the catalogue, `visits` and `demand` anew, and puts off the rest: until `deriveRest` it is not there at all.
 *
 * @throws {RangeError} as `derive`
 */
export async function deriveFirst(engine: Engine, settings: Settings = USUAL): Promise<void> {
  await derived(engine, [...FIRST, putOff], graded(settings));
}

/** Makes what `deriveFirst` put off, from the same rows and by the same grade; nothing where nothing is put off. */
export async function deriveRest(engine: Engine): Promise<void> {
  await engine.transaction(async (inside) => {
    const [waiting] = await inside.rows<{ failure_grade: number }>(PUT_OFF);
    if (!waiting) return;
    // First, so that an engine that derives in time finds nothing to do for these very scripts.
    await inside.run([nothingPutOff]);
    await inside.run(REST, { failure_grade: waiting.failure_grade });
  });
}
