import { strToU8, zipSync } from "fflate";

/** Workbooks written by hand as XML, so that no reader is tested against its own library's writer. */

export const escaped = (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

export function archive(files: Record<string, string | Uint8Array>, level: 0 | 6 = 6): Uint8Array<ArrayBuffer> {
  const bytes = Object.fromEntries(Object.entries(files).map(([name, text]) => [name, typeof text === "string" ? strToU8(text) : text]));
  return zipSync(bytes, { level }) as Uint8Array<ArrayBuffer>;
}

/** `AB7` for column 27, row 7. */
export function cellName(column: number, row: number): string {
  let letters = "";
  for (let left = column + 1; left > 0; left = Math.floor((left - 1) / 26)) letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters;
  return letters + row;
}

const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

export interface XlsxSheet {
  readonly name: string;
  /** What stands between `<worksheet>` and its end. */
  readonly xml: string;
  readonly state?: "hidden" | "veryHidden";
}

export interface XlsxMore {
  /** What stands in `<styleSheet>`. */
  readonly styles?: string;
  readonly strings?: string;
  readonly is_1904?: boolean;
}

/** An Excel workbook of sheets given as XML. */
export function xlsx(sheets: readonly XlsxSheet[], { styles, strings, is_1904 = false }: XlsxMore = {}): Uint8Array<ArrayBuffer> {
  const sheet = ({ name, state }: XlsxSheet, at: number) => `<sheet name="${escaped(name)}" sheetId="${at + 1}" r:id="rId${at + 1}"${state ? ` state="${state}"` : ""}/>`;
  const relation = (id: string, type: string, target: string) => `<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;
  const relations = [
    ...sheets.map((_sheet, at) => relation(`rId${at + 1}`, "worksheet", `worksheets/sheet${at + 1}.xml`)),
    ...(styles === undefined ? [] : [relation("rIdA", "styles", "styles.xml")]),
    ...(strings === undefined ? [] : [relation("rIdB", "sharedStrings", "/xl/sharedStrings.xml")]),
  ].join("");
  return archive({
    "[Content_Types].xml": `${XML}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
    "_rels/.rels": `${XML}<Relationships>${relation("rId1", "officeDocument", "xl/workbook.xml")}</Relationships>`,
    "xl/workbook.xml": `${XML}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><workbookPr${is_1904 ? ' date1904="1"' : ""}/><sheets>${sheets.map(sheet).join("")}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `${XML}<Relationships>${relations}</Relationships>`,
    ...(styles === undefined ? {} : { "xl/styles.xml": `${XML}<styleSheet xmlns="${MAIN}">${styles}</styleSheet>` }),
    ...(strings === undefined ? {} : { "xl/sharedStrings.xml": `${XML}<sst xmlns="${MAIN}">${strings}</sst>` }),
    ...Object.fromEntries(sheets.map(({ xml }, at) => [`xl/worksheets/sheet${at + 1}.xml`, `${XML}<worksheet xmlns="${MAIN}">${xml}</worksheet>`])),
  });
}

const text = (value: string, name: string) => `<c r="${name}" t="inlineStr"><is><t xml:space="preserve">${escaped(value)}</t></is></c>`;

/** Rows of text and numbers as the XML of a sheet; an empty text makes no cell. */
export function sheetData(rows: readonly (readonly (string | number)[])[]): string {
  const cell = (value: string | number, column: number, row: number) =>
    value === "" ? "" : typeof value === "number" ? `<c r="${cellName(column, row)}"><v>${value}</v></c>` : text(value, cellName(column, row));
  return `<sheetData>${rows.map((cells, at) => `<row r="${at + 1}">${cells.map((value, column) => cell(value, column, at + 1)).join("")}</row>`).join("")}</sheetData>`;
}

/** One sheet whose rows are given as XML: `<row …>`. */
export const xlsxRows = (rows: string, more: XlsxMore = {}, behind = "") => xlsx([{ name: "Jobs", xml: `<sheetData>${rows}</sheetData>${behind}` }], more);

const ODS = 'xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0"';

/** An OpenDocument spreadsheet of tables given as XML. */
export function ods(tables: string, styles = "", more: Record<string, string> = {}): Uint8Array<ArrayBuffer> {
  return archive({
    mimetype: "application/vnd.oasis.opendocument.spreadsheet",
    "content.xml": `${XML}<office:document-content ${ODS}><office:automatic-styles>${styles}</office:automatic-styles><office:body><office:spreadsheet>${tables}</office:spreadsheet></office:body></office:document-content>`,
    "META-INF/manifest.xml": `${XML}<manifest/>`,
    ...more,
  });
}

export const odsText = (value: string, attributes = "") => `<table:table-cell office:value-type="string"${attributes}><text:p>${value}</text:p></table:table-cell>`;
export const odsRow = (cells: string, attributes = "") => `<table:table-row${attributes}>${cells}</table:table-row>`;
export const odsTable = (rows: string, name = "Jobs", attributes = "") => `<table:table table:name="${name}"${attributes}>${rows}</table:table>`;
