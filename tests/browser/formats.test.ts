import { readFileSync } from "node:fs";
import { join } from "node:path";
import { tableToIPC, tableFromArrays } from "apache-arrow";
import { parquetWriteBuffer } from "hyparquet-writer";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, test } from "vitest";
import { ods, odsRow, odsTable, odsText, sheetData, xlsx } from "../records/formats/making-workbooks.ts";
import { closeAll } from "./harness.ts";
import type { App } from "./harness.ts";
import { empty, openRecords } from "./import-page.ts";

const HEADINGS = ["ticket_no", "received_on", "model"], ROW = ["F-1", "2026-01-05", "Withy 5"];
const cells = (row: readonly string[]) => odsRow(row.map((cell) => odsText(cell)).join(""));
const columns = Object.fromEntries(HEADINGS.map((heading, at) => [heading, [ROW[at] ?? ""]]));
const FILES: readonly (readonly [string, Uint8Array])[] = [
  ["jobs.xlsx", xlsx([{ name: "Jobs", xml: sheetData([HEADINGS, ROW]) }])],
  ["jobs.ods", ods(odsTable(cells(HEADINGS) + cells(ROW)))],
  ["jobs.json", new TextEncoder().encode(JSON.stringify([Object.fromEntries(HEADINGS.map((heading, at) => [heading, ROW[at]]))]))],
  ["jobs.parquet", new Uint8Array(parquetWriteBuffer({ columnData: HEADINGS.map((name) => ({ name, data: columns[name] ?? [], type: "STRING" })) }))],
  ["jobs.xls", readFileSync(join(import.meta.dirname, "../records/formats/old-jobs.xls"))],
  ["jobs.arrow", tableToIPC(tableFromArrays(columns), "file")],
];

let app: App;
let page: Page;
const shown = (text: string | RegExp) => page.getByText(text).first().waitFor();

beforeAll(async () => {
  app = await openRecords();
  page = app.page;
});
/** Each test begins in a shop without records. */
beforeEach(() => empty(page));
// What reads each format is fetched when such a file comes, under the same policy of contents as everything else.
afterEach(() => app.expectClean());
afterAll(closeAll);

const bring = (name: string, bytes: Uint8Array) =>
  page.getByLabel("Choose files").setInputFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });

describe("files that are no text come in through the Records room", () => {
  test.each(FILES)("%s", async (name, bytes) => {
    await bring(name, bytes);
    await shown(/^1 new row came in\./);
  });
});
