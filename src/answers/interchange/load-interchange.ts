import type { Engine } from "../../db/engine.ts";
import { rowsStream } from "../../db/rows-stream.ts";
import type { HandGroup } from "./hand-groups.ts";
import { interchangeGroups } from "./interchange-groups.ts";
import type { PartIdentity } from "./interchange-groups.ts";
import partsSql from "./parts.sql?raw";

const EMPTY = "-- Forgets which parts are the same thing.\ndelete from interchange";
const COLUMNS = { part_no: "varchar", interchange: "varchar", refused: "varchar" } as const;

/** Fills table `interchange` from the catalogue and what the owner settled, all or nothing; what stood in it is gone. */
export async function loadInterchange(engine: Engine, hand: readonly HandGroup[] = []): Promise<void> {
  await engine.transaction(async (inside) => {
    const rows = interchangeGroups(await inside.rows<PartIdentity>(partsSql), hand);
    await inside.run([EMPTY]);
    if (rows.length > 0) await inside.load("interchange", rowsStream(COLUMNS, rows.map((row) => ({ ...row }))), rows.length);
  });
}
