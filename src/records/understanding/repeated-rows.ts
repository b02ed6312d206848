import { KEYED_AGAIN } from "./row-shapes.ts";

interface Field { readonly at: number; readonly means: string }

/** A row keyed twice agrees in so many cells that chance is out of the question. */
const FEWEST_ALIKE = 6;

/** Finds rows that only repeat an earlier one of the same sheet. */
export class RepeatedRows {
  private readonly seen = new Map<string, string>();
  private readonly number_at: number;
  private readonly others: readonly number[];
  private before: readonly string[] | null = null;

  constructor(fields: readonly Field[]) {
    this.number_at = fields.find(({ means }) => means === "ticket_no")?.at ?? -1;
    this.others = fields.filter(({ means }) => means !== "ticket_no" && means !== "received_on").map(({ at }) => at);
  }

  /** @returns `known` for the same number with the same content, the reason for a job keyed again with a letter behind its number, else null */
  why(cells: readonly string[]): string | null {
    const number = (cells[this.number_at] ?? "").trim(), before = this.before;
    this.before = cells;
    if (number === "") return null;
    const content = cells.map((cell) => cell.trim()).join("\u001f");
    if (this.seen.get(number) === content) return "known";
    if (before && this.isKeyedAgain(number, cells, before)) return KEYED_AGAIN;
    if (!this.seen.has(number)) this.seen.set(number, content);
    return null;
  }

  private isKeyedAgain(number: string, cells: readonly string[], before: readonly string[]): boolean {
    const first = (before[this.number_at] ?? "").trim();
    if (first === "" || number.length !== first.length + 1 || !number.startsWith(first) || !/[a-z]$/i.test(number)) return false;
    const alike = this.others.filter((at) => (cells[at] ?? "").trim() !== "");
    return alike.length >= FEWEST_ALIKE && this.others.every((at) => (cells[at] ?? "").trim() === (before[at] ?? "").trim());
  }
}
