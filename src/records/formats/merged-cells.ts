interface Merge {
  readonly column: number;
  readonly last_row: number;
  readonly text: string;
  readonly typed: boolean;
}

/**
 * Fills what is written in a merged cell into the rows below it that it covers.
 *
 * Only down its first column, and only into rows that hold something else: a ticket number merged over its three lines
 * belongs to each of them, a title merged over the width of the sheet to none.
 */
export class MergedCells {
  filled = 0;
  private open: Merge[] = [];

  /** A merged cell begins in a row from which it reaches down to `last_row`. */
  begin(merge: Merge): void {
    if (merge.text !== "") this.open.push(merge);
  }

  /** Puts the covered cells of one row in; changes `cells` and `typed`. */
  fill(row: number, cells: string[], typed: Set<number>): void {
    if (this.open.length === 0) return;
    this.open = this.open.filter(({ last_row }) => last_row >= row);
    const is_blank = cells.every((cell) => cell.trim() === "");
    if (is_blank) return;
    for (const { column, text, typed: is_typed } of this.open) {
      if ((cells[column] ?? "") !== "") continue;
      while (cells.length < column) cells.push("");
      cells[column] = text;
      if (is_typed) typed.add(column);
      this.filled += 1;
    }
  }
}
