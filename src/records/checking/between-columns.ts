import type { TableName } from "../columns.ts";
import type { CellValue } from "./cell.ts";
import { dayInWords } from "./date-cell.ts";

interface Rule {
  /** The column that is marked when the two contradict each other. */
  readonly column: string;
  readonly other: string;
  /** Called when both are there; null when they agree. */
  readonly wrong: (value: CellValue, other: CellValue) => string | null;
}

const notBefore = (what: string) => (value: CellValue, other: CellValue): string | null =>
  String(value) < String(other) ? `${dayInWords(String(value))} is before ${what} (${dayInWords(String(other))})` : null;

const RULES: Partial<Record<TableName, readonly Rule[]>> = {
  tickets: [
    { column: "finished_on", other: "received_on", wrong: notBefore("the reel came in") },
    {
      column: "use_days",
      other: "salt_days",
      wrong: (use, salt) => (Number(use) < Number(salt) ? `${use} days of use are fewer than the ${salt} days in salt` : null),
    },
  ],
  findings: [
    {
      column: "qty",
      other: "action",
      wrong: (qty, action) => (qty === 0 && (action === "replaced" || action === "wanted") ? `a part was ${action}, so it must be 1 or more` : null),
    },
  ],
  orders: [{ column: "arrived_on", other: "ordered_on", wrong: notBefore("it was ordered") }],
};

export function hasRules(table: TableName): boolean {
  return table in RULES;
}

/**
 * Columns of one row that contradict each other.
 *
 * @param value what the row holds in a column; null when missing or itself wrong
 */
export function contradictions(table: TableName, value: (column: string) => CellValue): { column: string; reason: string }[] {
  const found: { column: string; reason: string }[] = [];
  for (const rule of RULES[table] ?? []) {
    const one = value(rule.column), other = value(rule.other);
    const reason = one === null || other === null ? null : rule.wrong(one, other);
    if (reason !== null) found.push({ column: rule.column, reason });
  }
  return found;
}
