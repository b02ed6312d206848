import { Float64, Int32, Table, Utf8, tableToIPC, vectorFromArray } from "apache-arrow";
import { gzipSync } from "node:zlib";
import { parquetWriteBuffer } from "hyparquet-writer";
import { afterAll, describe, expect, test } from "vitest";
import { ods, odsRow, odsTable, odsText, sheetData, xlsx } from "../records/formats/making-workbooks.ts";
import { endsOf } from "./damage.ts";
import type { Ends } from "./damage.ts";

const ROWS: (string | number)[][] = [["ticket_no", "min"], ["R-1", 55], ["R-2", 7.5]];
const STYLES = '<numFmts count="1"><numFmt numFmtId="164" formatCode="yyyy\\-mm\\-dd"/></numFmts><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="164"/></cellXfs>';
const XLSX = xlsx([{ name: "Jobs", xml: `${sheetData(ROWS).replace("</sheetData>", "")}<row r="4"><c r="A4" t="s"><v>0</v></c><c r="B4" s="1"><v>45000</v></c></row></sheetData>` }], { styles: STYLES, strings: "<si><t>R-3</t></si>" });
const ODS = ods(odsTable(odsRow(odsText("ticket_no") + odsText("min")) + odsRow(`${odsText("R-1")}<table:table-cell office:value-type="float" office:value="55"><text:p>55</text:p></table:table-cell>`)));
const CSV_GZ = new Uint8Array(gzipSync(ROWS.map((row) => row.join(",")).join("\n")));
const ARROW = { ticket_no: vectorFromArray(["R-1", "R-2"], new Utf8()), min: vectorFromArray([55, 7.5], new Float64()), qty: vectorFromArray([1, 2], new Int32()) };
const PARQUET = new Uint8Array(parquetWriteBuffer({ columnData: [{ name: "ticket_no", data: ["R-1", "R-2"], type: "STRING" }, { name: "min", data: [55, 7.5], type: "DOUBLE" }] }));

const told: Record<string, unknown> = {};
const tell = (name: string, { found, same, other, thrown }: Ends) => { told[name] = { found, same, other: other.length, thrown: thrown.length }; };
afterAll(() => { process.stdout.write(`damaged files: ${JSON.stringify(told)}\n`); });

describe("every byte changed and every cut is told in a sentence, or reads as the same rows", () => {
  test.each([["xlsx", XLSX], ["ods", ODS], ["csv.gz", CSV_GZ]] as const)("of a %s", async (name, good) => {
    const ends = await endsOf(good);
    tell(name, ends);
    expect([ends.thrown, ends.other]).toEqual([[], []]);
  }, 3_600_000);
});

describe("of a file whose format carries no check value every byte changed and every cut is told or read, and nothing else happens", () => {
  const arrow = (kind: "stream" | "file") => tableToIPC(new Table(ARROW), kind) as Uint8Array<ArrayBuffer>;
  test.each([["arrow stream", arrow("stream")], ["arrow file", arrow("file")], ["parquet", PARQUET]] as const)("%s", async (name, good) => {
    const ends = await endsOf(good);
    tell(name, ends);
    expect(ends.thrown).toEqual([]);
  }, 3_600_000);
});
