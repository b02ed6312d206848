import { grouped } from "../grouped.ts";
import { keptWith } from "../kept-with.ts";
import type { Advice, AdviceDue, AdvicePosition } from "./advice.ts";
import type { AdviceRecords } from "./advice-records.ts";
import { placeOf, turns } from "./all-wear.ts";
import type { WorkMeans } from "../worker-work.ts";
import { positionDue } from "./position-due.ts";
import type { PositionDue } from "./position-due.ts";
import { remembered } from "./remembered.ts";
import { skipping } from "./skipping.ts";
import { customerSlip, dueText } from "./slip.ts";
import type { WearLine } from "./wear-records.ts";
import type { Clock } from "./wear.ts";

/** Positions that stop the reel or cost most when they go; the others can wait for the next service. */
const MATTERS = new Set(["A", "B"]);
/** Share of reels that may have a failed part by then, unless the shop says otherwise. */
export const USUAL_RISK = 0.1;

/** Lines by position; the same lines are asked for one reel after the other. */
const byPosition = keptWith((lines: readonly WearLine[]) => [...grouped(lines, ({ position }) => position)]);

function dueOf(clock: Clock, positions: readonly AdvicePosition[]): AdviceDue {
  const known = positions.filter(({ status, due }) => status === "ok" && due.value !== null).sort((a, b) => (a.due.value as number) - (b.due.value as number));
  const first = known[0], after = first ? remembered(first.due.value as number, clock) : null;
  if (!first || after === null) {
    const status = positions.some((one) => one.status === "beyond the records") ? "beyond the records" : "too few";
    return { clock, status, after: null, value: null, low: null, high: null, set_by: null, set_by_name: null };
  }
  return { clock, status: "ok", after, value: first.due.value, low: first.due.low, high: first.due.high, set_by: first.position, set_by_name: first.position_name };
}

const soonest = (a: AdvicePosition, b: AdvicePosition) => (a.due.value ?? Infinity) - (b.due.value ?? Infinity) || b.failed - a.failed || (a.position < b.position ? -1 : 1);

/**
 * When a reel should come in so that no position that matters passes the risk, from records already counted. Plain rows in and out, so
 * it may run in a worker.
 *
 * @throws {RangeError} unless the risk lies between 0 and 1
 * @throws the signal's reason when called off
 */
export async function adviceOf(records: AdviceRecords, means: WorkMeans = {}): Promise<Advice> {
  const { question, days_clock, places, costs } = records;
  if (!(question.risk > 0 && question.risk < 1)) throw new RangeError(`adviceOf: risk must lie between 0 and 1, got ${question.risk}`);
  const turn = turns(means, "Working out when it should come in"), matter = new Set(costs.filter(({ criticality }) => MATTERS.has(criticality ?? "A")).map(({ position }) => position));
  const dues = async (lines: readonly WearLine[], clock: Clock) => {
    const by = byPosition(lines).filter(([position]) => matter.has(position)), found: PositionDue[] = [];
    for (const [done, [position, some]] of by.entries()) {
      found.push(positionDue(some, { question, clock, place: placeOf(places, position) }));
      await turn(done + (clock === "months" ? by.length : 0), 2 * by.length);
    }
    return found.filter(({ found: { n } }) => n > 0);
  };
  const days = await dues(records.by_days, days_clock), months = await dues(records.by_months, "months");
  const by_days = dueOf(days_clock, days.map(({ found }) => found)), by_months = dueOf("months", months.map(({ found }) => found));
  const status = by_days.status === "ok" || by_months.status === "ok" ? "ok" : by_days.status, skip = skipping(days, records);
  return {
    question, status, by_days, by_months, positions: [...days.map(({ found }) => found).sort(soonest), ...months.map(({ found }) => found).sort(soonest)],
    skipping: skip, slip: customerSlip(question, by_days, by_months), text: dueText(question, by_days, by_months),
  };
}
