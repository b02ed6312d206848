import type { RoutineChange } from "./answers.ts";
import { hasFault, isChanged, isSealPlace, isService } from "./routine.ts";
import type { MadeRecord, RowMaker } from "./row-outcome.ts";
import { rowsBelow } from "./sheet-plan.ts";
import type { SheetPlan } from "./sheet-plan.ts";

/** A seal that services changed again and again without a word about a fault, so that only its owner can say why. */
export interface RoutinePart {
  readonly position: string;
  /** Changed at services without a word about a fault, and the pieces of that. */
  readonly silent: number;
  readonly pieces: number;
  /** Changed at services with such a word. */
  readonly worn: number;
  /** Other parts than seals that services changed, and how many of those have such a word. */
  readonly others: number;
  readonly others_worn: number;
  readonly likeliest: RoutineChange;
}

/** Fewer silent changes are not asked about, nor where less than this share of them is silent (our own, no source). */
const FEWEST = 10, MOSTLY = 0.75;
/** Words of theirs say that it was routine this often: then the silent ones are told apart already. */
const SAID = 0.1;
/**
 * Changed only when worn, a seal would have its faults named as often as other parts have. It has not where a third of that or
 * less is named, and at least five were to be expected: one seal in twenty-five by chance (Poisson, at most 1 of 5).
 */
const FEWEST_OTHERS = 20, FEWEST_EXPECTED = 5, OF_EXPECTED = 1 / 3;

interface Seal { silent: number; pieces: number; worn: number; said: number }

/** Counts what services changed, with and without a word about a fault. */
export class RoutineTally {
  private readonly seals = new Map<string, Seal>();
  private others = 0;
  private others_worn = 0;

  /** @param records of one row; a row of several reels has several tickets */
  see(records: readonly MadeRecord[]): void {
    const services = new Map(records.filter(({ table, cells }) => table === "tickets" && isService(cells)).map(({ cells }) => [cells["ticket_no"], cells]));
    for (const { table, cells } of records) {
      const ticket = services.get(cells["ticket_no"]);
      if (table === "findings" && ticket && isChanged(cells)) this.changed(cells, hasFault(cells, ticket));
    }
  }

  private changed(cells: MadeRecord["cells"], fault: boolean): void {
    const place = cells["position"] ?? "";
    if (!isSealPlace(place)) {
      this.others += 1;
      this.others_worn += Number(fault);
      return;
    }
    const seal = this.seals.get(place) ?? { silent: 0, pieces: 0, worn: 0, said: 0 };
    this.seals.set(place, seal);
    if (cells["routine"] === "yes") seal.said += 1;
    else if (fault) seal.worn += 1;
    else {
      seal.silent += 1;
      seal.pieces += cells["qty"] ? Number(cells["qty"]) : 1;
    }
  }

  /** Seals whose owner has to be asked, the most changed first; none of which the words themselves say that it was routine. */
  parts(): RoutinePart[] {
    const { others, others_worn } = this;
    return [...this.seals].flatMap(([position, { silent, pieces, worn, said }]): RoutinePart[] => {
      if (silent < FEWEST || silent < (silent + worn) * MOSTLY || said >= silent * SAID) return [];
      const expected = others < FEWEST_OTHERS ? 0 : ((silent + worn) * others_worn) / others;
      const likeliest = expected >= FEWEST_EXPECTED && worn <= expected * OF_EXPECTED ? "as routine" : "when worn";
      return [{ position, silent, pieces, worn, others, others_worn, likeliest }];
    }).sort((a, b) => b.silent - a.silent || (a.position < b.position ? -1 : 1));
  }
}

/**
 * The plan with the seals its owner has to be asked about. Reads the rows once, as if nothing were answered.
 *
 * @param makerOf makes records of the rows of a plan
 * @throws the signal's reason when cancelled
 */
export async function withRoutineParts(plan: SheetPlan, makerOf: (plan: SheetPlan) => RowMaker, signal: AbortSignal): Promise<SheetPlan> {
  if (plan.kind !== "jobs") return plan;
  const maker = makerOf({ ...plan, answers: plan.answers && { ...plan.answers, routine_parts: null } }), tally = new RoutineTally();
  for await (const rows of rowsBelow(plan.sheet, plan.start, signal)) {
    for (const { outcome } of rows.flatMap((row) => maker.take(row))) if (outcome.end === "in") tally.see(outcome.records);
  }
  return { ...plan, routine_parts: tally.parts() };
}
