import { tableFromIPC } from "apache-arrow";
import type { Table } from "apache-arrow";
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
/** What follows the end of the stream, where readers of Arrow stop: version and checksum. */
const trailer = (sha256: string) => `\nSALTBENCH ROLL-UP ${VERSION} ${sha256}\n`;
const TRAILER = /\nSALTBENCH ROLL-UP (\d{1,3}) ([0-9a-f]{64})\n$/;
const TRAILER_BYTES = 100;
/** Four whole numbers and three words by their places: a file that says it holds more rows cannot be true. */
const LEAST_BYTES_A_ROW = 28;
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

async function checksum(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", bytes as Uint8Array<ArrayBuffer>);
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The rows as an Arrow IPC stream, followed by its version and the SHA-256 of its bytes. */
export async function rollUpFileOf(rows: readonly RollUpRow[]): Promise<Uint8Array> {
  const stream = rowsStream(TYPES, rows), end = new TextEncoder().encode(trailer(await checksum(stream))), file = new Uint8Array(stream.length + end.length);
  file.set(stream);
  file.set(end, stream.length);
  return file;
}

const whole = (value: unknown, most = 2 ** 31): value is number => typeof value === "number" && Number.isInteger(value) && value >= 0 && value < most;

function rowOf(row: Record<string, unknown>): RollUpRow {
  const { shop, position, maker, model, condition, inspected, failed } = row;
  const fits = whole(shop) && typeof position === "string" && (maker === null || typeof maker === "string") && typeof model === "string"
    && whole(condition, 1024) && whole(inspected) && whole(failed) && failed <= inspected;
  if (!fits) throw new BadRollUp("A row of this roll-up cannot be true: it is not as it was written. Ask for the file again.");
  return { shop, position, maker, model, condition, inspected, failed };
}

const NO_ROLL_UP = "This is no roll-up of other shops, or it is damaged at its end: it has to be the file roll-up.arrow that a report on many shops wrote.";
const CHANGED = "This roll-up is not as it was written: its checksum does not fit. Ask for the file again.";

/** The stream without what follows it; nothing of it is read before its bytes are known to be those that were written. */
async function streamOf(file: Uint8Array): Promise<Uint8Array> {
  if (file.length > MOST_BYTES) throw new BadRollUp("This file is too large for a roll-up of other shops.");
  const [end, version, sha256] = TRAILER.exec(new TextDecoder("latin1").decode(file.subarray(-TRAILER_BYTES))) ?? [];
  if (end === undefined) throw new BadRollUp(NO_ROLL_UP);
  const stream = file.slice(0, file.length - end.length);
  if (await checksum(stream) !== sha256) throw new BadRollUp(CHANGED);
  if (version !== VERSION) throw new BadRollUp(`This roll-up is of version ${version}, this Saltbench reads version ${VERSION}.`);
  return stream;
}

/** A file made to mislead has a checksum that fits. */
function tableOf(stream: Uint8Array): Table {
  try {
    const table = tableFromIPC(stream);
    if (table.numRows * LEAST_BYTES_A_ROW > stream.length) throw new BadRollUp(NO_ROLL_UP);
    return table;
  } catch (cause) {
    throw cause instanceof BadRollUp ? cause : new BadRollUp(NO_ROLL_UP, { cause });
  }
}

/**
 * The rows of a roll-up file, every one checked.
 *
 * @throws {BadRollUp} with a sentence for the owner when it is no roll-up, of another version, or not as it was written
 */
export async function rollUpRows(file: Uint8Array): Promise<RollUpRow[]> {
  const table = tableOf(await streamOf(file)), columns = Object.keys(TYPES).map((name) => [name, table.getChild(name)] as const), rows: RollUpRow[] = [];
  for (let at = 0; at < table.numRows; at += 1) rows.push(rowOf(Object.fromEntries(columns.map(([name, column]) => [name, column?.get(at)]))));
  return rows;
}
