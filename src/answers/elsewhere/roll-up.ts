import { Schema, Table, tableFromIPC, tableToIPC } from "apache-arrow";
import { frame } from "../../db/arrow-stream.ts";
import { DamagedRows } from "../../db/errors.ts";
import { rowsStream } from "../../db/rows-stream.ts";
import { conditionRows } from "../failures/condition-rows.ts";
import type { ConditionCells } from "../failures/condition-rows.ts";

/**
 * How often one shop had inspected a part on a model under the same conditions, and how often it had failed. Shops go by number:
 * a roll-up holds no name of a shop, no ticket, no reel and no customer.
 */
export type RollUpRow = {
  readonly shop: number;
  readonly position: string;
  readonly maker: string | null;
  readonly model: string;
  /** Water, rinse, days fished, sealed and way of coming in as one number, see `conditions.sql`. */
  readonly condition: number;
  readonly inspected: number;
  readonly failed: number;
};

/** Number of the layout; a file with another is refused. */
const VERSION = "1";
const TYPES = { shop: "integer", position: "varchar", maker: "varchar", model: "varchar", condition: "integer", inspected: "integer", failed: "integer" } as const;
/** A roll-up of hundreds of shops has a tenth of this. */
const MOST_BYTES = 256 * 2 ** 20;

/** A file that is no roll-up, or not as it was written; the message is for the owner. */
export class BadRollUp extends Error {
  override readonly name = "BadRollUp";
}

/** All seasons together, in the order of position, model, shop and condition. */
export function rollUpOf(cells: readonly ConditionCells[]): RollUpRow[] {
  return cells.flatMap((one) => {
    const sums = new Map<number, { inspected: number; failed: number }>();
    for (const { shop, condition, inspected, failed } of conditionRows([one])) {
      const key = shop * 1024 + condition, sum = sums.get(key) ?? { inspected: 0, failed: 0 };
      sums.set(key, { inspected: sum.inspected + inspected, failed: sum.failed + failed });
    }
    const { position, maker, model } = one;
    return [...sums].sort(([a], [b]) => a - b).map(([key, sum]): RollUpRow => ({ shop: Math.floor(key / 1024), position, maker, model, condition: key % 1024, ...sum }));
  });
}

/** SHA-256 over the rows as text, so that it holds whatever wrote the file again. */
async function checksum(rows: readonly RollUpRow[]): Promise<string> {
  const text = rows.map(({ shop, position, maker, model, condition, inspected, failed }) => JSON.stringify([shop, position, maker, model, condition, inspected, failed])).join("\n");
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The rows as an Arrow IPC stream that says its version and checksum in its schema. */
export async function rollUpStream(rows: readonly RollUpRow[]): Promise<Uint8Array> {
  const table = tableFromIPC(rowsStream(TYPES, rows)), about = new Map([["saltbench_roll_up", VERSION], ["sha256", await checksum(rows)]]);
  return tableToIPC(new Table(new Schema(table.schema.fields, about), table.batches), "stream");
}

const whole = (value: unknown, most = 2 ** 31): value is number => typeof value === "number" && Number.isInteger(value) && value >= 0 && value < most;

function rowOf(row: Record<string, unknown>): RollUpRow {
  const { shop, position, maker, model, condition, inspected, failed } = row;
  const fits = whole(shop) && typeof position === "string" && (maker === null || typeof maker === "string") && typeof model === "string"
    && whole(condition, 1024) && whole(inspected) && whole(failed) && failed <= inspected;
  if (!fits) throw new BadRollUp("A row of this roll-up cannot be true: it is not as it was written. Ask for the file again.");
  return { shop, position, maker, model, condition, inspected, failed };
}

function tableOf(file: Uint8Array): Table {
  try {
    frame(file);
    return tableFromIPC(file);
  } catch (cause) {
    if (cause instanceof DamagedRows) throw new BadRollUp("This is no roll-up of other shops, or it is cut short: it has to be the file roll-up.arrow that a report on many shops wrote.", { cause });
    throw new BadRollUp("This roll-up is damaged. Ask for the file again.", { cause });
  }
}

/**
 * The rows of a roll-up file, every one checked.
 *
 * @throws {BadRollUp} with a sentence for the owner when it is no roll-up, of another version, or not as it was written
 */
export async function rollUpRows(file: Uint8Array): Promise<RollUpRow[]> {
  if (file.length > MOST_BYTES) throw new BadRollUp("This file is too large for a roll-up of other shops.");
  const table = tableOf(file), about = table.schema.metadata, version = about.get("saltbench_roll_up");
  if (version === undefined) throw new BadRollUp("This is no roll-up of other shops: it has to be the file roll-up.arrow that a report on many shops wrote.");
  if (version !== VERSION) throw new BadRollUp(`This roll-up is of version ${version}, this Saltbench reads version ${VERSION}.`);
  const columns = Object.keys(TYPES).map((name) => [name, table.getChild(name)] as const), rows: RollUpRow[] = [];
  for (let at = 0; at < table.numRows; at += 1) rows.push(rowOf(Object.fromEntries(columns.map(([name, column]) => [name, column?.get(at)]))));
  if (await checksum(rows) !== about.get("sha256")) throw new BadRollUp("This roll-up is not as it was written: its checksum does not fit. Ask for the file again.");
  return rows;
}
