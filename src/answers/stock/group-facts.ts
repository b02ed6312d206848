import { fitGammaPrior } from "../../stats/gamma-prior.ts";
import { daysFrom } from "../days.ts";
import { unused } from "../demand/demand-blocks.ts";
import type { DemandBlocks } from "../demand/demand-blocks.ts";
import { demandOutlook } from "../demand/demand-outlook.ts";
import type { GroupAsked, GroupOutlook, Outlook } from "../demand/demand-outlook.ts";
import { between, blockOf, YEAR_BLOCKS } from "../demand/four-weeks.ts";
import { grouped } from "../grouped.ts";
import { clumpSizes } from "./clump.ts";
import type { ShelfRow } from "./chosen-part.ts";
import type { UseBelief } from "./expected-demand.ts";
import { orderTerms } from "./order-terms.ts";
import type { Around, OrderTerms } from "./order-terms.ts";
import type { StockRecords } from "./restock-facts.ts";

/** Everything known of one interchange group. */
export interface GroupFacts {
  readonly interchange: string;
  readonly rows: readonly ShelfRow[];
  readonly terms: OrderTerms;
  readonly outlook: GroupOutlook;
  readonly belief: UseBelief;
  /** How busy the protection time is against the usual. */
  readonly factor: number;
  readonly waiting: number;
  /** Pieces ordered and not arrived, from the orders; null when no order is under way. */
  readonly under_way: number | null;
}

const refused = (rows: readonly ShelfRow[]): boolean => rows.some((row) => row.refused !== null);

/** Pieces that go at once, of each group, from its last two years. */
function clumps(blocks: DemandBlocks, names: readonly string[]): number[] {
  const none = unused(blocks), last = 2 * YEAR_BLOCKS;
  return clumpSizes(names.map((name) => {
    const { pieces, squares } = blocks.use.get(name) ?? none;
    return { pieces: between(pieces, 0, last), squares: between(squares, 0, last) };
  }));
}

/** Block of the last day before a new habit, the first too old to count; null when the records begin later. */
function blockBefore(day: string | undefined, newest: string, blocks: DemandBlocks): number | null {
  if (day === undefined || day > newest) return null;
  const block = blockOf(daysFrom(day, newest) + 1);
  return block < blocks.days.length ? block : null;
}

/** Rests on the records alone, whatever is asked of them: a replay asks four times a day. */
const known_priors = new WeakMap<StockRecords, { readonly shape: number; readonly rate: number }>();

/** What all plannable lines say lines are like, from their counted use, which hangs on no setting. */
function prior(records: StockRecords, outlook: Outlook, plannable: readonly string[]): { readonly shape: number; readonly rate: number } {
  const found = known_priors.get(records);
  if (found) return found;
  const known = plannable.flatMap((name) => outlook.groups.get(name) ?? []).filter(({ used_days }) => used_days > 0);
  const fitted = known.length === 0 ? { shape: 0.5, rate: 365 } : fitGammaPrior(known.map(({ used }) => used), known.map(({ used_days }) => used_days));
  known_priors.set(records, fitted);
  return fitted;
}

/**
 * One entry an interchange group, of everything in the catalogue or used: its rows, its terms, its use, and what is known
 * of its rate when all lines together say what lines are like. Lines that mix several parts do not take part in that.
 */
export function groupFacts(records: StockRecords, around: Around): { facts: GroupFacts[]; unevenness: number } {
  const { shelf, blocks, waiting, under_way, habits, newest } = records, rows = grouped(shelf, (row) => row.interchange);
  const names = [...new Set([...rows.keys(), ...blocks.use.keys(), ...waiting.keys()])].sort(), sizes = clumps(blocks, names);
  const terms = new Map(names.map((name) => [name, orderTerms(rows.get(name) ?? [], around)]));
  const asked = new Map(names.map((name, i): [string, GroupAsked] => {
    const { target, lead, review_days } = terms.get(name) as OrderTerms;
    return [name, { target, horizon: lead.days + review_days, clump: sizes[i] ?? 1, mixed: refused(rows.get(name) ?? []), ruled: blockBefore(habits.get(name), newest, blocks) }];
  }));
  const outlook = demandOutlook(blocks, asked), known = prior(records, outlook, names.filter((name) => !asked.get(name)?.mixed));
  const facts = names.map((interchange, i): GroupFacts => {
    const one = outlook.groups.get(interchange) as GroupOutlook, { pieces, days, factor } = one.expected;
    return {
      interchange, rows: rows.get(interchange) ?? [], terms: terms.get(interchange) as OrderTerms, outlook: one, factor,
      belief: { shape: known.shape + pieces, rate: known.rate + days, clump: sizes[i] ?? 1, unevenness: outlook.unevenness },
      waiting: waiting.get(interchange) ?? 0, under_way: under_way.get(interchange) ?? null,
    };
  });
  return { facts, unevenness: outlook.unevenness };
}
