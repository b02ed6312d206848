import type { Engine } from "../../db/engine.ts";
import { rowsStream } from "../../db/rows-stream.ts";
import { csvRows } from "../formats/csv.ts";
import { withoutApostrophe } from "../csv-out.ts";
import { TABLE_FILES } from "./kept-rows.ts";

/** Where each row of the backup's tables came from, beside them because the tables hold only what the shop wrote. */
export const SOURCES = "sources.csv";

/** `line` is the row's line in the table's file here; `row_key` is what the row is known again by, which may hang on words that are gone. */
export const SOURCE_COLUMNS = ["table", "line", "source_file", "source_line", "of_version", "row_key"] as const;

const TYPES = { file_no: "integer", source_line: "integer", from_file: "varchar", from_line: "integer", of_version: "varchar", from_key: "varchar" } as const;

function waitingSource(cells: readonly string[]): Record<keyof typeof TYPES, string | number | null> {
  const [table = "", line = "", from_file = "", from_line = "", of_version = "", from_key = ""] = cells.map(withoutApostrophe);
  return { file_no: TABLE_FILES.findIndex((one) => one.table === table) + 1, source_line: Number(line), from_file, from_line: Number(from_line), of_version: of_version || null, from_key: from_key || null };
}

/** Puts where rows came from beside the waiting rows, whose files are the backup's tables in their order. */
export async function bringSources(engine: Engine, text: string): Promise<void> {
  async function* once() { yield text; }
  let heading = true;
  for await (const rows of csvRows(once(), { delimiter: ",", newline: "\n" })) {
    const sources = rows.slice(heading ? 1 : 0).map(({ cells }) => waitingSource(cells));
    heading = false;
    await engine.load("staging.sources", rowsStream(TYPES, sources), sources.length);
  }
}
