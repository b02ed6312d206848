import { MergedCells } from "./merged-cells.ts";
import { plainRow } from "./sheet-source.ts";
import type { SheetRow } from "./sheet.ts";
import { durationText, numberText, yesNoText } from "./typed-text.ts";
import type { Typed } from "./number-format.ts";
import { DAMAGED_WORKBOOK, LIMITS, Unreadable, tooWide } from "./unreadable.ts";
import { attribute } from "./xml-scan.ts";
import type { XmlReader } from "./xml-scan.ts";

/** A row that is written once and said to stand there more often than this is decoration of the sheet, and read once. */
const REPEATS = 1000;
const HOUR_S = 3600, MINUTE_S = 60;

/** A count in an attribute, 1 when there is none. */
function count(attributes: string, name: string): number {
  const text = attribute(attributes, name), number = text === null ? 1 : Number(text);
  if (!Number.isInteger(number) || number < 1) throw new Unreadable(DAMAGED_WORKBOOK);
  return number;
}

/** `PT01H40M00S` as hours and minutes. */
function timeText(value: string): Typed | null {
  const found = /^(-?)P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:([\d.]+)S)?)?$/.exec(value);
  if (!found) return null;
  const [, sign, days = "0", hours = "0", minutes = "0", seconds = "0"] = found;
  const all = (Number(days) * 24 + Number(hours)) * HOUR_S + Number(minutes) * MINUTE_S + Number(seconds);
  return { text: durationText(sign === "-" ? -all : all), typed: true };
}

function dateText(value: string): Typed | null {
  const found = /^(\d{4}-\d{2}-\d{2})(?:T(\d{2}:\d{2})(:[\d.:]+)?)?/.exec(value);
  if (!found) return null;
  const [, day = "", time, rest] = found;
  return { text: time === undefined || (time === "00:00" && !/[1-9]/.test(rest ?? "")) ? day : `${day}T${time}`, typed: true };
}

/** A number shown with zeros in front of it is a name, not a number: `R-0123`. */
function numberOrName(value: string, shown: string): Typed | null {
  const number = Number(value);
  if (value === "" || !Number.isFinite(number)) return null;
  if (Number.isInteger(number) && number >= 0 && /^[^\d.,]*0\d+$/.test(shown) && Number(shown.replace(/^\D*/, "")) === number) return { text: shown, typed: false };
  return { text: numberText(number), typed: true };
}

/** What a cell holds, by the type the file gives it; `shown` is the text a reader sees. */
function cellText(attributes: string, shown: string): Typed {
  const type = attribute(attributes, "value-type"), get = (name: string) => attribute(attributes, name) ?? "";
  if (type === "float" || type === "currency" || type === "percentage") return numberOrName(get("value"), shown) ?? { text: shown, typed: false };
  if (type === "date") return dateText(get("date-value")) ?? { text: shown, typed: false };
  if (type === "time") return timeText(get("time-value")) ?? { text: shown, typed: false };
  if (type === "boolean") return { text: yesNoText(get("boolean-value") === "true"), typed: true };
  return { text: shown === "" ? get("string-value") : shown, typed: false };
}

/** Collects the text of the paragraphs of a cell, without its comments and drawings. */
class CellParagraphs {
  private text = "";
  private paragraphs = 0;
  private depth = 0;
  private aside = 0;

  open(name: string, attributes: string): void {
    if (name === "annotation" || name === "shapes" || name === "frame" || name === "custom-shape") this.aside += 1;
    if (this.aside > 0) return;
    if (name === "p") {
      if (this.paragraphs > 0) this.text += "\n";
      this.paragraphs += 1;
      this.depth += 1;
    } else if (this.depth > 0 && name === "s") this.text += " ".repeat(Math.min(count(attributes, "c"), LIMITS.cell_chars));
    else if (this.depth > 0 && name === "tab") this.text += "\t";
    else if (this.depth > 0 && name === "line-break") this.text += "\n";
    if (this.text.length > LIMITS.row_chars) throw new Unreadable(DAMAGED_WORKBOOK);
  }

  close(name: string): void {
    if (name === "annotation" || name === "shapes" || name === "frame" || name === "custom-shape") this.aside -= 1;
    else if (this.aside === 0 && name === "p") this.depth -= 1;
  }

  add(text: string): void {
    // Blanks and line ends that are written out count as one blank (ODF 1.2 part 1, 6.1.2); those that are meant are elements.
    if (this.aside === 0 && this.depth > 0) this.text += text.replace(/[ \t\n]+/g, " ");
  }

  get shown(): string {
    return this.text;
  }
}

/** Reads the content of an OpenDocument spreadsheet and collects the rows of one of its sheets. */
export class OdsRows implements XmlReader {
  hidden_rows = 0;
  hidden_columns = 0;
  repeated_rows = 0;
  is_done = false;
  readonly merged = new MergedCells();
  private readonly wanted: number;
  private rows: SheetRow[] = [];
  private sheet = -1;
  private depth = 0;
  private line = 1;
  private row = "";
  private cells: string[] = [];
  private typed = new Set<number>();
  private column = 0;
  private cell: CellParagraphs | null = null;
  private attributes = "";

  /** @param wanted number of the sheet, from 0 */
  constructor(wanted: number) {
    this.wanted = wanted;
  }

  /** The rows read since it was asked last. */
  take(): SheetRow[] {
    const { rows } = this;
    this.rows = [];
    return rows;
  }

  open(name: string, attributes: string): void {
    if (name === "table") this.openTable();
    if (this.sheet !== this.wanted || this.depth !== 1) return;
    if (this.cell) this.cell.open(name, attributes);
    else if (name === "table-row") this.openRow(attributes);
    else if (name === "table-cell" || name === "covered-table-cell") this.openCell(attributes);
    else if (name === "table-column" && isHidden(attributes) && count(attributes, "number-columns-repeated") < LIMITS.columns) {
      this.hidden_columns += count(attributes, "number-columns-repeated");
    }
  }

  text(text: string): void {
    this.cell?.add(text);
  }

  close(name: string): void {
    if (this.sheet === this.wanted && this.depth === 1) {
      if (name === "table-cell" || name === "covered-table-cell") this.closeCell();
      else if (name === "table-row") this.closeRow();
      else this.cell?.close(name);
    }
    if (name === "table") this.closeTable();
  }

  /** A cell may hold a table of its own; that is no sheet. */
  private openTable(): void {
    if ((this.depth += 1) === 1) this.sheet += 1;
  }

  private closeTable(): void {
    if ((this.depth -= 1) === 0 && this.sheet === this.wanted) this.is_done = true;
  }

  private openRow(attributes: string): void {
    this.row = attributes;
    this.cells = [];
    this.typed = new Set();
    this.column = 0;
  }

  private openCell(attributes: string): void {
    this.cell = new CellParagraphs();
    this.attributes = attributes;
  }

  private closeCell(): void {
    const { attributes, cell } = this, times = count(attributes, "number-columns-repeated");
    const { text, typed } = cellText(attributes, cell?.shown ?? "");
    this.cell = null;
    if (text !== "") this.put(text, typed, times);
    this.column += times;
  }

  private put(text: string, typed: boolean, times: number): void {
    if (this.column + times > LIMITS.columns) throw tooWide(this.line);
    const last_row = this.line + count(this.attributes, "number-rows-spanned") - 1;
    if (last_row > this.line) this.merged.begin({ column: this.column, last_row, text, typed });
    while (this.cells.length < this.column) this.cells.push("");
    for (let at = this.column; at < this.column + times; at += 1) {
      this.cells.push(text);
      if (typed) this.typed.add(at);
    }
  }

  private closeRow(): void {
    const times = count(this.row, "number-rows-repeated"), holds = this.cells.length > 0, read = times > REPEATS ? 1 : times;
    if (holds && isHidden(this.row)) this.hidden_rows += read;
    if (holds) this.repeated_rows += times - read;
    for (let at = 0; holds && at < read; at += 1) this.pushRow(this.line + at);
    this.line += times;
    if (holds && this.line > LIMITS.workbook_rows + 1) throw new Unreadable(DAMAGED_WORKBOOK);
  }

  private pushRow(line: number): void {
    const cells = [...this.cells], typed = new Set(this.typed);
    this.merged.fill(line, cells, typed);
    this.rows.push(plainRow(line, cells, typed));
  }
}

const isHidden = (attributes: string) => /^(collapse|filter)$/.test(attribute(attributes, "visibility") ?? "");
