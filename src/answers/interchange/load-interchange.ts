import { Table, Utf8, tableToIPC, vectorFromArray } from "apache-arrow";
import type { Engine } from "../../db/engine.ts";
import { interchangeGroups } from "./interchange-groups.ts";
import type { PartIdentity } from "./interchange-groups.ts";
import partsSql from "./parts.sql?raw";

const EMPTY = "-- Forgets which parts are the same thing.\ndelete from interchange";

/** Fills table `interchange` from the catalogue; what stood in it is gone. */
export async function loadInterchange(engine: Engine): Promise<void> {
  const parts = await engine.rows<PartIdentity>(partsSql);
  const rows = interchangeGroups(parts);
  await engine.run([EMPTY]);
  if (rows.length === 0) return;
  const text = (values: readonly (string | null)[]) => vectorFromArray(values, new Utf8());
  const table = new Table({
    part_no: text(rows.map((row) => row.part_no)),
    interchange: text(rows.map((row) => row.interchange)),
    refused: text(rows.map((row) => row.refused)),
  });
  await engine.load("interchange", tableToIPC(table, "stream"), rows.length);
}
