import type { CellValue } from "../checking/cell.ts";
import type { CheckedRow, Fault } from "../checking/row.ts";
import type { Plan } from "./headings.ts";

/** One ticket put together from the rows of a sheet that has one row a finding. */
export interface TicketOfRows {
  readonly values: CellValue[];
  readonly guessed: string[];
  /** Line of the first of its rows. */
  readonly line: number;
}

/** Puts tickets together from rows that repeat them. */
export class TicketsOfRows {
  private readonly tickets = new Map<string, TicketOfRows>();
  private readonly plan: Plan;
  private readonly number_at: number;

  constructor(plan: Plan) {
    this.plan = plan;
    this.number_at = plan.fields.findIndex(({ column }) => column.name === "ticket_no");
  }

  /**
   * Takes the ticket's cells of one row. A cell that is empty in one row may be filled in another; two different cells
   * contradict each other, and nothing of the row is taken.
   *
   * @returns the contradictions; none when the row was taken
   */
  add({ values, guessed }: CheckedRow, line: number): Fault[] {
    const ticket_no = String(values[this.number_at] ?? ""), ticket = this.tickets.get(ticket_no);
    if (!ticket) {
      this.tickets.set(ticket_no, { values: [...values], guessed: [...guessed], line });
      return [];
    }
    const faults = this.contradictions(ticket, values, guessed);
    if (faults.length === 0) this.fill(ticket, values, guessed);
    return faults;
  }

  get size(): number {
    return this.tickets.size;
  }

  all(): IterableIterator<TicketOfRows> {
    return this.tickets.values();
  }

  private contradictions(ticket: TicketOfRows, values: readonly CellValue[], guessed: readonly string[]): Fault[] {
    return this.plan.fields.flatMap(({ column, heading }, at) => {
      const value = values[at] ?? null, before = ticket.values[at] ?? null;
      const isGuess = guessed.includes(column.name) || ticket.guessed.includes(column.name);
      if (value === null || before === null || value === before || isGuess) return [];
      const reason = `line ${ticket.line} says ${String(before)} for the same ticket`;
      return [{ column: heading, value: String(value), reason }];
    });
  }

  private fill(ticket: TicketOfRows, values: readonly CellValue[], guessed: readonly string[]): void {
    for (const [at, { column: { name } }] of this.plan.fields.entries()) {
      const value = values[at] ?? null, place = ticket.guessed.indexOf(name);
      if (value === null) continue;
      if (ticket.values[at] === null) {
        ticket.values[at] = value;
        if (guessed.includes(name)) ticket.guessed.push(name);
      } else if (place !== -1 && !guessed.includes(name)) {
        ticket.values[at] = value;
        ticket.guessed.splice(place, 1);
      }
    }
  }
}
