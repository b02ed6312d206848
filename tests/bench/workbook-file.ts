import { closeSync, openSync, writeSync } from "node:fs";
import { strToU8, Zip, ZipDeflate, ZipPassThrough } from "fflate";
import type { Column } from "../../src/records/columns.ts";
import { cellName, escaped } from "../records/formats/making-workbooks.ts";
import type { Text } from "./grown-files.ts";

/** One sheet: its rows in pieces, so that memory need hold one. */
export interface SheetToWrite { readonly name: string; readonly columns: readonly Column[]; readonly pieces: () => Iterable<readonly Text[]> }

/** Rows of one sheet, its heading counted in; no spreadsheet program has more (ECMA-376 as the programs keep it). */
export const SHEET_ROWS = 1_048_576;

const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>', MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const DAY_ONE = Date.UTC(1899, 11, 30), DATE_STYLE = 1;
const NUMBERS = new Set(["number", "whole", "money"]);

const relation = (id: string, type: string, target: string) => `<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;

/** Everything but the sheets and the texts their cells point to. */
function frameOf(names: readonly string[]): Record<string, string> {
  return {
    "[Content_Types].xml": `${XML}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
    "_rels/.rels": `${XML}<Relationships>${relation("rId1", "officeDocument", "xl/workbook.xml")}</Relationships>`,
    "xl/workbook.xml": `${XML}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${names.map((name, at) => `<sheet name="${escaped(name)}" sheetId="${at + 1}" r:id="rId${at + 1}"/>`).join("")}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `${XML}<Relationships>${names.map((_, at) => relation(`rId${at + 1}`, "worksheet", `worksheets/sheet${at + 1}.xml`)).join("")}${relation("rIdA", "styles", "styles.xml")}${relation("rIdB", "sharedStrings", "sharedStrings.xml")}</Relationships>`,
    "xl/styles.xml": `${XML}<styleSheet xmlns="${MAIN}"><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs></styleSheet>`,
  };
}

/**
 * Writes a workbook as a spreadsheet program does, piece by piece: days and numbers as numbers, texts once each, cells pointing to them.
 *
 * @returns its bytes on the disk
 * @throws {RangeError} when a sheet gets more rows than a spreadsheet holds
 */
export function writeWorkbook(path: string, sheets: readonly SheetToWrite[]): number {
  const file = openSync(path, "w"), texts = new Map<string, number>();
  let bytes = 0;
  const zip = new Zip((error, data) => {
    if (error) throw error;
    bytes += writeSync(file, data);
  });
  const entry = (name: string) => { const made = new ZipDeflate(name, { level: 1 }); zip.add(made); return made; };
  const textNo = (text: string) => texts.get(text) ?? texts.set(text, texts.size).size - 1;
  const cell = (value: string, { kind }: Pick<Column, "kind">, name: string) => {
    if (value === "") return "";
    if (NUMBERS.has(kind)) return `<c r="${name}"><v>${value}</v></c>`;
    if (kind === "date") return `<c r="${name}" s="${DATE_STYLE}"><v>${(Date.parse(value) - DAY_ONE) / 86_400_000}</v></c>`;
    return `<c r="${name}" t="s"><v>${textNo(value)}</v></c>`;
  };
  try {
    for (const [name, text] of Object.entries(frameOf(sheets.map((one) => one.name)))) { const made = new ZipPassThrough(name); zip.add(made); made.push(strToU8(text), true); }
    for (const [at, { name, columns, pieces }] of sheets.entries()) {
      const made = entry(`xl/worksheets/sheet${at + 1}.xml`);
      const letters = columns.map((_, i) => cellName(i, 1).replace("1", ""));
      let line = 1;
      const row = (cells: readonly string[]) => `<row r="${line}">${cells.join("")}</row>`;
      made.push(strToU8(`${XML}<worksheet xmlns="${MAIN}"><sheetData>${row(columns.map((column, i) => cell(column.name, { kind: "text" }, cellName(i, 1))))}`));
      for (const rows of pieces()) {
        const lines = rows.map((one) => { line += 1; return row(columns.map((column, i) => cell(one[column.name] ?? "", column, `${letters[i]}${line}`))); });
        if (line > SHEET_ROWS) throw new RangeError(`writeWorkbook: needs at most ${SHEET_ROWS} rows in ${name}, got more`);
        made.push(strToU8(lines.join("")));
      }
      made.push(strToU8("</sheetData></worksheet>"), true);
    }
    const made = entry("xl/sharedStrings.xml"), all = [...texts.keys()];
    made.push(strToU8(`${XML}<sst xmlns="${MAIN}">`));
    for (let at = 0; at < all.length; at += 50_000) made.push(strToU8(all.slice(at, at + 50_000).map((text) => `<si><t xml:space="preserve">${escaped(text)}</t></si>`).join("")));
    made.push(strToU8("</sst>"), true);
    zip.end();
  } finally {
    closeSync(file);
  }
  return bytes;
}
