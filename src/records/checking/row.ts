import { cameInFrom } from "../came-in.ts";
import type { Column } from "../columns.ts";
import type { Field, Plan } from "../reading/headings.ts";
import { contradictions, hasRules } from "./between-columns.ts";
import { cellValue } from "./cell.ts";
import type { Around, CellValue } from "./cell.ts";
import { numberCell } from "./number-cell.ts";
import { isRoutineWord } from "./word-cell.ts";
import { Wrong } from "./wrong.ts";
import { yesNoCell } from "./yes-no-cell.ts";

/** A cell that keeps its row from being taken over. */
export interface Fault {
  /** Heading as in the file. */
  readonly column: string;
  readonly value: string;
  readonly reason: string;
}

export interface CheckedRow {
  /** One for each column of the table, in its order. */
  readonly values: CellValue[];
  readonly faults: readonly Fault[];
  /** Columns whose value was worked out from another column of the row. */
  readonly guessed: readonly string[];
  /** What was put right, in words that go into the file's remarks with their count. */
  readonly put_right: readonly string[];
}

const NONE: readonly never[] = [];
const NO_QTY = "a quantity of 0 where no part was replaced or wanted was read as empty";

/** A pasted page in a cell would make the list of rows to fix unreadable. */
const SHOWN_CHARS = 500;
const shown = (text: string) => (text.length > SHOWN_CHARS ? `${text.slice(0, SHOWN_CHARS)}…` : text);

const MINUTES = 60;

/** What a cell is held against by itself: the smallest quantity depends on the action, and hours are fewer than minutes. */
function ownBounds({ column, convert }: Field): Column {
  if (convert === "hours to minutes") return { ...column, max: (column.max ?? Infinity) / MINUTES };
  return column.name === "qty" && column.min === 1 ? { ...column, min: 0 } : column;
}

function read(text: string, { convert }: Field, column: Column, around: Around): CellValue | Wrong {
  if (convert === null) return cellValue(text, column, around);
  if (convert === "failed to grade") {
    const failed = yesNoCell(text);
    return failed instanceof Wrong ? failed : failed ? 4 : 0;
  }
  const hours = numberCell(text, column);
  return hours instanceof Wrong ? hours : Math.round(hours * MINUTES * 1e6) / 1e6;
}

function textOf({ at, constant, values }: Field, cells: readonly string[]): string {
  const text = at === null ? constant ?? "" : (cells[at] ?? "").trim();
  return values?.get(text.toLowerCase()) ?? text;
}

function blank({ column, heading }: Field): null | Wrong {
  return column.required ? new Wrong(`${heading} is empty`) : null;
}

/** Reads the rows of one plan; made once for a file. */
export class RowChecker {
  private readonly plan: Plan;
  private readonly bounds: readonly Column[];
  private readonly place: ReadonlyMap<string, number>;
  private readonly around: { last_day: string; reel_kind: string | null; position: string | null };

  /** @param last_day newest day a date may name, `YYYY-MM-DD` */
  constructor(plan: Plan, last_day: string) {
    this.plan = plan;
    this.bounds = plan.fields.map(ownBounds);
    this.place = new Map(plan.fields.map(({ column }, at) => [column.name, at]));
    this.around = { last_day, reel_kind: null, position: null };
  }

  /** @param reel_kind kind of reel, when another plan of the same row knows it */
  check(cells: readonly string[], reel_kind: string | null = null): CheckedRow {
    const { fields } = this.plan, values: CellValue[] = [], faults: Fault[] = [];
    this.around.reel_kind = reel_kind;
    this.around.position = null;
    for (let at = 0; at < fields.length; at += 1) {
      const field = fields[at] as Field, text = textOf(field, cells);
      const value = text === "" ? blank(field) : read(text, field, this.bounds[at] as Column, this.around);
      if (value instanceof Wrong) faults.push({ column: field.heading, value: shown(text), reason: value.reason });
      values.push(value instanceof Wrong ? null : value);
      if (field.column.kind === "position" && typeof value === "string") this.around.position = value;
    }
    if (hasRules(this.plan.table.name)) this.addContradictions(values, cells, faults);
    return { values, faults, guessed: this.guess(values), put_right: this.putRight(values, cells) };
  }

  private at(name: string): number {
    return this.place.get(name) ?? -1;
  }

  private addContradictions(values: readonly CellValue[], cells: readonly string[], faults: Fault[]): void {
    for (const { column, reason } of contradictions(this.plan.table.name, (name) => values[this.at(name)] ?? null)) {
      const field = this.plan.fields[this.at(column)];
      if (field) faults.push({ column: field.heading, value: shown(textOf(field, cells)), reason });
    }
  }

  /** Why the reel came in, from the complaint, where nothing is written. */
  private guess(values: CellValue[]): readonly string[] {
    const complaint = values[this.at("complaint")], at = this.at("came_in");
    if (typeof complaint !== "string" || values[at] !== null) return NONE;
    values[at] = cameInFrom(complaint);
    return values[at] === null ? NONE : ["came_in"];
  }

  private putRight(values: CellValue[], cells: readonly string[]): readonly string[] {
    if (this.plan.table.name !== "findings") return NONE;
    const action = this.plan.fields[this.at("action")], routine = this.at("routine"), qty = this.at("qty");
    if (action && values[routine] === null && isRoutineWord(textOf(action, cells))) values[routine] = true;
    if (values[qty] !== 0) return NONE;
    values[qty] = null;
    return [NO_QTY];
  }
}
