import clear from "./clear-ledger.sql?raw";
import numbers from "./derive/0-numbers.sql?raw";
import tickets from "./derive/0-tickets.sql?raw";
import versions from "./derive/0-versions.sql?raw";
import whatCounts from "./derive/0-what-counts.sql?raw";
import catalogue from "./derive/1-catalogue.sql?raw";
import places from "./derive/2-places.sql?raw";
import visits from "./derive/2-visits.sql?raw";
import inspections from "./derive/3-inspections.sql?raw";
import demand from "./derive/4-demand.sql?raw";
import failures from "./derive/4-failures.sql?raw";
import type { Engine } from "./engine.ts";
import nothingSeveral from "./nothing-several.sql?raw";
import schema from "./schema.sql?raw";

/** Positions with a grade of 3 or 4 count as failed unless the shop says otherwise (RECORDS.md, findings). */
const FAILURE_GRADE = 3;

/** What settles ticket numbers that several rows bear. */
const SETTLING = [versions, tickets, whatCounts];

function derivation(failure_grade: number): { scripts: string[]; values: { failure_grade: number } } {
  if (![1, 2, 3, 4].includes(failure_grade)) throw new RangeError(`derive: failure_grade must be 1, 2, 3 or 4, got ${failure_grade}`);
  return { scripts: [catalogue, visits, places, inspections, demand, failures], values: { failure_grade } };
}

/** Without such numbers, now and before, the empty tables stay as they are: making them anew takes as long as a small derivation. */
const ANY_SEVERAL = `-- Whether a ticket number has several rows, or had.
select exists (select 1 from several) or exists (select 1 from versions) as any_several`;

/** Makes the tables of imported rows, empty; the derived ones are there after the first `derive`. What was there is gone. */
export async function prepareTables(engine: Engine): Promise<void> {
  await engine.run([schema, nothingSeveral, whatCounts]);
}

/** Makes all tables, the derived ones too, empty; what was there is gone. */
export async function prepareSchema(engine: Engine): Promise<void> {
  const { scripts, values } = derivation(FAILURE_GRADE);
  await engine.run([schema, numbers, ...SETTLING, ...scripts], values);
}

/** Empties `ledger.*`; the derived tables stay as they are until `derive`. */
export async function clearImported(engine: Engine): Promise<void> {
  await engine.run([clear]);
}

/**
 * Makes the derived tables anew from `ledger.*`, all or none.
 *
 * @param settings `failure_grade`: the grade from which a position counts as failed
 * @throws {RangeError} if `failure_grade` is not one of 1, 2, 3, 4
 */
export async function derive(engine: Engine, settings = { failure_grade: FAILURE_GRADE }): Promise<void> {
  const { scripts, values } = derivation(settings.failure_grade);
  await engine.transaction(async (inside) => {
    await inside.run([numbers]);
    const [found] = await inside.rows<{ any_several: boolean }>(ANY_SEVERAL);
    await inside.run([...(found?.any_several ? SETTLING : []), ...scripts], values);
  });
}
