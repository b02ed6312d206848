import { MergedCells } from "./merged-cells.ts";
import { serialText } from "./number-format.ts";
import type { Shown, Typed } from "./number-format.ts";
import { plainRow } from "./sheet-source.ts";
import type { SheetRow } from "./sheet.ts";
import { momentText, yesNoText } from "./typed-text.ts";
import { DAMAGED_WORKBOOK, LIMITS, Unreadable, tooWide } from "./unreadable.ts";
import { attribute, eachAttribute } from "./xml-scan.ts";
import type { XmlReader } from "./xml-scan.ts";
import { RunText, withEscapes } from "./xlsx-parts.ts";

/** What the cells of a sheet point to. */
export interface CellContext {
  readonly strings: readonly string[];
  readonly styles: readonly Shown[];
  readonly is_1904: boolean;
  /** Last row of the merged cells of several rows, by their first cell as `row:column`. */
  readonly merges: ReadonlyMap<string, number>;
}

const CODE_A = 65, LETTERS = 26;

/** Column of a cell from its name, from 0: `B7` is 1; null without letters. */
export function columnOf(name: string): number | null {
  let column = 0, at = 0;
  for (; at < name.length; at += 1) {
    const letter = name.charCodeAt(at) - CODE_A;
    if (letter < 0 || letter >= LETTERS) break;
    column = column * LETTERS + letter + 1;
  }
  return at === 0 ? null : column - 1;
}

const asText = (text: string): Typed => ({ text, typed: false });

function isoText(value: string): Typed {
  const ms = Date.parse(/T.*(Z|[+-]\d\d:?\d\d)$/.test(value) || !value.includes("T") ? value : `${value}Z`);
  return Number.isNaN(ms) ? asText(value) : { text: momentText(ms), typed: true };
}

/** The text of a cell that is not written in place. */
function storedText(type: string, value: string, shown: Shown, { strings, is_1904 }: CellContext): Typed {
  if (value === "") return asText("");
  if (type === "s") return asText(strings[Number(value)] ?? "");
  if (type === "b") return { text: yesNoText(value.trim() === "1" || value.trim() === "true"), typed: true };
  if (type === "d") return isoText(value.trim());
  if (type === "str") return asText(withEscapes(value));
  const number = Number(value);
  return type === "e" || !Number.isFinite(number) ? asText(value) : serialText(number, shown, is_1904);
}

/** Reads the XML of one sheet and collects its rows. */
export class XlsxRows implements XmlReader {
  hidden_rows = 0;
  hidden_columns = 0;
  readonly merged = new MergedCells();
  private readonly context: CellContext;
  private rows: SheetRow[] = [];
  private line = 0;
  private cells: string[] = [];
  private typed = new Set<number>();
  private column = -1;
  private type = "";
  private shown: Shown = "number";
  private value = "";
  private in_value = false;
  private in_place: RunText | null = null;

  constructor(context: CellContext) {
    this.context = context;
  }

  /** The rows read since it was asked last. */
  take(): SheetRow[] {
    const { rows } = this;
    this.rows = [];
    return rows;
  }

  open(name: string, attributes: string): void {
    if (name === "c") this.openCell(attributes);
    else if (name === "v") this.in_value = true;
    else if (name === "is") this.in_place = new RunText();
    else if (this.in_place) this.in_place.open(name);
    else if (name === "row") this.openRow(attributes);
    else if (name === "col") this.countHidden(attributes);
  }

  text(text: string): void {
    if (this.in_value) this.value += text;
    else this.in_place?.text(text);
  }

  close(name: string): void {
    if (name === "v") this.in_value = false;
    else if (name === "c") this.closeCell();
    else if (name === "row") this.closeRow();
    else this.in_place?.close(name);
  }

  private openRow(attributes: string): void {
    const named = Number(attribute(attributes, "r") ?? this.line + 1);
    if (!Number.isInteger(named) || named < 1 || named > LIMITS.workbook_rows) throw new Unreadable(DAMAGED_WORKBOOK);
    this.line = named;
    this.cells = [];
    this.typed = new Set();
    this.column = -1;
    if (attribute(attributes, "hidden") === "1") this.hidden_rows += 1;
  }

  private countHidden(attributes: string): void {
    if (attribute(attributes, "hidden") !== "1") return;
    const first = Number(attribute(attributes, "min")), last = Number(attribute(attributes, "max"));
    // The columns beyond the table are often hidden all together.
    if (last < LIMITS.columns && last >= first) this.hidden_columns += last - first + 1;
  }

  private openCell(attributes: string): void {
    let style = 0, column = this.column + 1;
    this.type = "n";
    eachAttribute(attributes, (name, value) => {
      if (name === "r") column = columnOf(value) ?? column;
      else if (name === "t") this.type = value;
      else if (name === "s") style = Number(value);
      return undefined;
    });
    this.column = column;
    this.shown = this.context.styles[style] ?? "number";
    this.value = "";
    this.in_place = null;
  }

  private closeCell(): void {
    const { column, in_place } = this;
    const { text, typed } = in_place ? asText(in_place.take()) : storedText(this.type, this.value, this.shown, this.context);
    this.in_place = null;
    if (text === "") return;
    if (column >= LIMITS.columns) throw tooWide(this.line);
    while (this.cells.length < column) this.cells.push("");
    this.cells[column] = text;
    if (typed) this.typed.add(column);
    const last_row = this.context.merges.get(`${this.line}:${column}`);
    if (last_row !== undefined) this.merged.begin({ column, last_row, text, typed });
  }

  private closeRow(): void {
    this.merged.fill(this.line, this.cells, this.typed);
    if (this.cells.length > 0) this.rows.push(plainRow(this.line, this.cells, this.typed));
  }
}
