import { cameInFrom } from "../came-in.ts";
import type { Field, Plan } from "../reading/headings.ts";
import { contradictions } from "./between-columns.ts";
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

/** A pasted page in a cell would make the list of rows to fix unreadable. */
const SHOWN_CHARS = 500;
const shown = (text: string) => (text.length > SHOWN_CHARS ? `${text.slice(0, SHOWN_CHARS)}…` : text);

const MINUTES = 60;

function converted(text: string, field: Field, around: Around): CellValue | Wrong {
  if (field.convert === "failed to grade") {
    const failed = yesNoCell(text);
    return failed instanceof Wrong ? failed : failed ? 4 : 0;
  }
  if (field.convert === "hours to minutes") {
    const hours = numberCell(text, { ...field.column, max: (field.column.max ?? Infinity) / MINUTES });
    return hours instanceof Wrong ? hours : Math.round(hours * MINUTES * 1e6) / 1e6;
  }
  // The smallest quantity depends on the action, so 0 is judged with the whole row.
  const column = field.column.name === "qty" && field.column.min === 1 ? { ...field.column, min: 0 } : field.column;
  return cellValue(text, column, around);
}

function textOf(field: Field, cells: readonly string[]): string {
  const text = field.at === null ? field.constant ?? "" : (cells[field.at] ?? "").trim();
  return field.values?.get(text.toLowerCase()) ?? text;
}

/** Reads the rows of one plan; made once for a file. */
export class RowChecker {
  private readonly place: ReadonlyMap<string, number>;
  private readonly plan: Plan;
  private readonly last_day: string;

  /** @param last_day newest day a date may name, `YYYY-MM-DD` */
  constructor(plan: Plan, last_day: string) {
    this.plan = plan;
    this.last_day = last_day;
    this.place = new Map(plan.fields.map(({ column }, at) => [column.name, at]));
  }

  /** @param reel_kind kind of reel, when another plan of the same row knows it */
  check(cells: readonly string[], reel_kind: string | null = null): CheckedRow {
    const { fields } = this.plan, faults: Fault[] = [], values: CellValue[] = [];
    let around: Around = { last_day: this.last_day, reel_kind, position: null };
    for (const field of fields) {
      const text = textOf(field, cells), value = text === "" ? this.blank(field) : converted(text, field, around);
      if (value instanceof Wrong) faults.push({ column: field.heading, value: shown(text), reason: value.reason });
      values.push(value instanceof Wrong ? null : value);
      if (field.column.kind === "position" && typeof value === "string") around = { ...around, position: value };
    }
    this.addContradictions(values, cells, faults);
    return { values, faults, ...this.workedOut(values, cells) };
  }

  private blank({ column, at, heading }: Field): null | Wrong {
    if (!column.required) return null;
    return new Wrong(at === null ? `this file has no column ${column.name}` : `${heading} is empty`);
  }

  private addContradictions(values: readonly CellValue[], cells: readonly string[], faults: Fault[]): void {
    const value = (name: string) => values[this.place.get(name) ?? -1] ?? null;
    for (const { column, reason } of contradictions(this.plan.table.name, value)) {
      const field = this.plan.fields[this.place.get(column) ?? -1];
      if (field) faults.push({ column: field.heading, value: shown(textOf(field, cells)), reason });
    }
  }

  private workedOut(values: CellValue[], cells: readonly string[]): { guessed: string[]; put_right: string[] } {
    const guessed: string[] = [], put_right: string[] = [];
    const at = (name: string) => this.place.get(name) ?? -1;
    const complaint = values[at("complaint")], came_in = at("came_in");
    if (typeof complaint === "string" && values[came_in] === null) {
      values[came_in] = cameInFrom(complaint);
      if (values[came_in] !== null) guessed.push("came_in");
    }
    if (this.plan.table.name !== "findings") return { guessed, put_right };
    const action = this.plan.fields[at("action")], routine = at("routine"), qty = at("qty");
    if (action && values[routine] === null && isRoutineWord(textOf(action, cells))) values[routine] = true;
    if (values[qty] === 0) {
      values[qty] = null;
      put_right.push("a quantity of 0 where no part was replaced or wanted was read as empty");
    }
    return { guessed, put_right };
  }
}
