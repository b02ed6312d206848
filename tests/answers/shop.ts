import { prepareAnswers } from "../../src/answers/prepare.ts";
import type { Engine, SqlValue } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { derive, prepareSchema } from "../../src/db/prepare.ts";

type Rows = readonly Record<string, SqlValue>[];

/** What a test shop wrote; columns that are not given are empty. Keys are tables of the ledger, or lists of the trade. */
export interface Shop {
  tickets?: Rows; findings?: Rows; models?: Rows; parts?: Rows; fits?: Rows; suppliers?: Rows; orders?: Rows;
  position_list?: Rows; coverage?: Rows;
}

const LISTS = ["position_list", "coverage"];
const literal = (value: SqlValue) => (typeof value === "string" ? `'${value.replaceAll("'", "''")}'` : String(value));

function insert(table: string, rows: Rows): string[] {
  const name = LISTS.includes(table) ? table : `ledger.${table}`;
  const given = LISTS.includes(table) ? rows : rows.map((row, at) => ({ import_no: 1, source_file: `${table}.csv`, source_line: at + 2, ...row }));
  return given.map((row) => `insert into ${name} (${Object.keys(row).join(", ")}) values (${Object.values(row).map(literal).join(", ")})`);
}

/** Positions the tests use, in the order of the position list. */
export const POSITIONS: Rows = [
  { position: "line_roller_bearing", name: "Line roller bearing", group_code: "LR", group_name: "Line roller", family: "ball bearing", optional: false },
  { position: "ar_clutch", name: "One-way clutch", group_code: "AR", group_name: "Anti-reverse", family: "one-way clutch", optional: false },
  { position: "drag_knob_seal", name: "Drag knob seal", group_code: "DS", group_name: "Drag & spool", family: "seal", optional: false },
];

/** A full service opens all three, a line roller job the roller only and sees the clutch. */
export const COVERAGE: Rows = [
  ...POSITIONS.map(({ position }) => ({ reel_kind: "spinning", job: "full service", position: position ?? null, level: "inspected" })),
  { reel_kind: "spinning", job: "line roller", position: "line_roller_bearing", level: "inspected" },
  { reel_kind: "spinning", job: "line roller", position: "ar_clutch", level: "seen" },
];

/** The real engine, empty. */
export async function openShop(): Promise<Engine> {
  return openNodeEngine();
}

/** Fills the engine with this shop and nothing else, and derives what the answers read. */
export async function fill(engine: Engine, shop: Shop): Promise<void> {
  await prepareSchema(engine);
  const tables = Object.entries({ position_list: POSITIONS, coverage: COVERAGE, ...shop });
  await engine.run(tables.flatMap(([table, rows]) => insert(table, rows as Rows)));
  await derive(engine);
  await prepareAnswers(engine);
}
