import type { Engine } from "../db/engine.ts";
import { rowsStream } from "../db/rows-stream.ts";
import { coverage, positions } from "./vocabulary.ts";

const EMPTY = "-- Forgets the trade's lists.\ndelete from position_list; delete from coverage";

const POSITION_LIST = {
  position: "varchar", name: "varchar", group_code: "varchar", group_name: "varchar", family: "varchar", optional: "boolean",
  salt_class: "integer", criticality: "varchar",
} as const;

const COVERAGE = { reel_kind: "varchar", job: "varchar", position: "varchar", level: "varchar", not_tier: "varchar" } as const;

/** Fills `position_list` and `coverage` from the vocabulary; what stood in them is gone. Derive afterwards. */
export async function loadVocabulary(engine: Engine): Promise<void> {
  const places = positions.map(({ position, name, group, group_name, family, qty_min, salt_class, criticality }) =>
    ({ position, name, group_code: group, group_name, family, optional: qty_min === 0, salt_class, criticality }));
  const opened = coverage.map(({ reel_kind, job, position, level, tier_not }) => ({ reel_kind, job, position, level, not_tier: tier_not }));
  await engine.transaction(async (inside) => {
    await inside.run([EMPTY]);
    await inside.load("position_list", rowsStream(POSITION_LIST, places), places.length);
    await inside.load("coverage", rowsStream(COVERAGE, opened), opened.length);
  });
}
