/** One column of a table on screen. */
export interface Column<R> {
  readonly key: string;
  readonly label: string;
  /** Stands small beside the label. */
  readonly unit?: string;
  /** Numbers go right; "left" is the default. */
  readonly align?: "left" | "right";
  /** What the column is sorted by, and what is shown where there is no `text`. Missing is null. */
  readonly value: (row: R) => string | number | null;
  readonly text?: (row: R) => string;
  /** False where an order would mean nothing. */
  readonly sortable?: boolean;
  /** Words that may break over lines, such as a reason; other cells keep to one line. */
  readonly wide?: boolean;
  /** Stands aside where the table would else move sideways; the reader can bring it back. */
  readonly spare?: boolean;
}

export interface Order {
  readonly key: string;
  readonly direction: "ascending" | "descending";
}

/** Text of a cell: the column's own, else the value, with a dash where it is missing. */
export function cellText<R>(column: Column<R>, row: R): string {
  const text = column.text ? column.text(row) : column.value(row);
  return text === null || text === "" ? "–" : String(text);
}

function compare(a: string | number, b: string | number): number {
  if (typeof a === "number" && typeof b === "number") return a - b;
  return String(a).localeCompare(String(b), undefined, { numeric: true });
}

/**
 * Rows in the asked order; equal rows keep the order they came in, and rows without a value stand last in both directions.
 *
 * @throws {RangeError} when no column has the order's key
 */
export function ordered<R>(rows: readonly R[], columns: readonly Column<R>[], order: Order | null): readonly R[] {
  if (order === null) return rows;
  const column = columns.find((one) => one.key === order.key);
  if (!column) throw new RangeError(`ordered: order.key must name a column, got ${order.key}`);
  const sign = order.direction === "ascending" ? 1 : -1;
  return [...rows].sort((a, b) => {
    const left = column.value(a), right = column.value(b);
    if (left === null || right === null) return Number(left === null) - Number(right === null);
    return sign * compare(left, right);
  });
}

/** The order after a press on a column's heading: numbers start with the largest, words with the first. */
export function nextOrder<R>(current: Order | null, column: Column<R>): Order {
  const first = column.align === "right" ? "descending" : "ascending";
  if (current?.key !== column.key) return { key: column.key, direction: first };
  return { key: column.key, direction: current.direction === "ascending" ? "descending" : "ascending" };
}
