import { parts } from "../../data/demo-shop/days.ts";
import type { Opening } from "../../data/demo-shop/bench.ts";
import type { Past, Visit } from "../../data/demo-shop/shop.ts";
import { timeRatios } from "./spell-fit.ts";

const share = <Item>(items: readonly Item[], is: (item: Item) => boolean): number => items.filter(is).length / items.length;
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const year = (visit: Visit) => parts(visit.received).year;
const code = (visit: Visit) => visit.reel.plan.model.code;

export function quantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b), at = p * (sorted.length - 1), low = Math.floor(at);
  return (sorted[low] ?? NaN) + (at - low) * ((sorted[low + 1] ?? sorted[low] ?? NaN) - (sorted[low] ?? NaN));
}

export interface Seen { visit: Visit; opening: Opening }
/** Every true opening of a position, with its visit. */
export const openings = (past: Past, position: string): Seen[] => past.visits.flatMap((visit) =>
  visit.openings.filter((opening) => opening.position === position).map((opening) => ({ visit, opening })));
const failed = ({ opening }: Seen) => opening.failed;

/** Mantel–Haenszel ratio of shares, failed of opened, within strata. */
function ratioWithin(seen: readonly Seen[], ours: (visit: Visit) => boolean, stratum: (visit: Visit) => string): number {
  let above = 0, below = 0;
  for (const name of new Set(seen.map(({ visit }) => stratum(visit)))) {
    const here = seen.filter(({ visit }) => stratum(visit) === name), one = here.filter(({ visit }) => ours(visit)), other = here.filter(({ visit }) => !ours(visit));
    above += (one.filter(failed).length * other.length) / here.length;
    below += (other.filter(failed).length * one.length) / here.length;
  }
  return above / below;
}

/** Tickets, people, water: 5.2, 5.3. */
export function volumes(past: Past): Record<string, number> {
  const { visits } = past, all = visits.flatMap((visit) => visit.openings);
  const salt = visits.filter(({ reel }) => reel.owner === "private" && reel.water === "salt").map((visit) => visit.salt_days);
  return {
    "reels seen": new Set(visits.map((visit) => visit.reel.no)).size,
    "tickets 2023": visits.filter((visit) => year(visit) === 2023).length, "tickets 2024": visits.filter((visit) => year(visit) === 2024).length,
    "tickets 2025": visits.filter((visit) => year(visit) === 2025).length, "opened": all.length,
    "failures a ticket": all.filter((opening) => opening.failed).length / visits.length,
    "private %": 100 * share(visits, (visit) => visit.reel.owner === "private"), "charter %": 100 * share(visits, (visit) => visit.reel.owner === "charter"),
    "club %": 100 * share(visits, (visit) => visit.reel.owner === "club"), "fresh %": 100 * share(visits, (visit) => visit.reel.water === "fresh"),
    "brackish %": 100 * share(visits, (visit) => visit.reel.water === "brackish"), "salt %": 100 * share(visits, (visit) => visit.reel.water === "salt"),
    "always rinsed %": 100 * share(visits, (visit) => visit.reel.rinse === "always"), "never rinsed %": 100 * share(visits, (visit) => visit.reel.rinse === "never"),
    "planned %": 100 * share(visits, (visit) => visit.source === "planned"), "complaint %": 100 * share(visits, (visit) => visit.source === "complaint"),
    "accident %": 100 * share(visits, (visit) => visit.source === "accident"), "immersion %": 100 * share(visits, (visit) => visit.source === "immersion"),
    "declined %": 100 * share(visits, (visit) => visit.job === "DIAG"), "warranty %": 100 * share(visits, (visit) => visit.warranty),
    "comeback %": 100 * share(visits, (visit) => visit.comeback), "abandoned %": 100 * share(visits, (visit) => visit.outcome === "abandoned"),
    "median salt days": quantile(salt, 0.5), "p90 salt days": quantile(salt, 0.9),
    "bench hours a year": visits.reduce((sum, visit) => sum + (visit.minutes ?? 0), 0) / 180,
  };
}

export const jobShares = (past: Past): Record<string, number> => Object.fromEntries(
  ["FULL", "EXT", "GEAR", "LR", "DIAG", "SPB", "HDL", "AR", "DUNK", "DRAG", "BAIL", "LW", "SEAL"].map((job) => [job, 100 * share(past.visits, (visit) => visit.job === job)]));

export const monthIndex = (past: Past): number[] => Array.from({ length: 12 }, (_, month0) =>
  12 * share(past.visits, (visit) => parts(visit.received).month === month0 + 1));

/** Failed share of true openings in per cent, and openings, by position. */
export function failedShares(past: Past): Map<string, { opened: number; failed: number }> {
  const found = new Map<string, { opened: number; failed: number }>();
  for (const opening of past.visits.flatMap((visit) => visit.openings)) {
    const row = found.get(opening.position) ?? { opened: 0, failed: 0 };
    row.opened++;
    if (opening.failed) row.failed++;
    found.set(opening.position, row);
  }
  return found;
}

/** Median minutes by `job kind`, the two-speed lever drag apart. */
export function medianMinutes(visits: readonly Visit[]): Map<string, { n: number; median: number }> {
  const found = new Map<string, number[]>();
  for (const visit of visits) {
    const own = code(visit) === "JAR" && visit.job === "FULL" ? ":JAR" : "", key = `${visit.job} ${visit.reel.plan.model.kind}${own}`;
    if (visit.minutes !== null) found.set(key, [...(found.get(key) ?? []), visit.minutes]);
  }
  return new Map([...found].map(([key, values]) => [key, { n: values.length, median: quantile(values, 0.5) }] as const));
}

/** Line-roller bearings of 4×7×2.5 seen again within 14 months of fitting: failed share by when they were fitted. */
function refitted(past: Past): { before: number; batch: number; after: number } {
  const groups = { before: [] as Seen[], batch: [] as Seen[], after: [] as Seen[] }, last = new Map<number, number>();
  for (const seen of openings(past, "line_roller_bearing").sort((a, b) => (a.visit.started ?? 0) - (b.visit.started ?? 0))) {
    const { reel, started } = seen.visit, small = reel.plan.places.some((place) => place.life.position === "line_roller_bearing" && place.need?.lines.some((line) => line.size === "4x7x2.5"));
    if (!small || started === null) continue;
    const fitted = last.get(reel.no);
    if (fitted !== undefined && started - fitted <= 14 * 30.44) groups[fitted < Date.UTC(2024, 4, 1) / 864e5 ? "before" : fitted <= Date.UTC(2024, 8, 30) / 864e5 ? "batch" : "after"].push(seen);
    if (seen.opening.action === "replaced") last.set(reel.no, started);
  }
  return { before: 100 * share(groups.before, failed), batch: 100 * share(groups.batch, failed), after: 100 * share(groups.after, failed) };
}

/** How many times the minutes of T1 the junior needs in a year, within job and kind. */
function junior(past: Past, of: number): number {
  const jobs = new Map<string, { T1: number[]; T2: number[] }>();
  for (const visit of past.visits) {
    if (visit.minutes === null || visit.technician === "OWN" || year(visit) !== of) continue;
    const key = `${visit.job} ${visit.reel.plan.model.kind}`, row = jobs.get(key) ?? { T1: [], T2: [] };
    row[visit.technician].push(Math.log(visit.minutes));
    jobs.set(key, row);
  }
  const both = [...jobs.values()].filter((row) => row.T1.length > 0 && row.T2.length > 0), weight = (row: { T1: number[]; T2: number[] }) => (row.T1.length * row.T2.length) / (row.T1.length + row.T2.length);
  return Math.exp(both.reduce((sum, row) => sum + weight(row) * (mean(row.T2) - mean(row.T1)), 0) / both.reduce((sum, row) => sum + weight(row), 0));
}

/** The planted truths' figures: 5.9. */
export function truths(past: Past): Record<string, number> {
  const clutch = openings(past, "ar_clutch"), of = (model: string) => clutch.filter(({ visit }) => code(visit) === model);
  const spinning = clutch.filter(({ visit }) => visit.reel.plan.model.kind === "S"), water = (visit: Visit) => visit.reel.water;
  const plain = spinning.filter(({ visit }) => code(visit) !== "WHI"), unsealed = plain.filter(({ visit }) => !visit.reel.plan.model.sealed);
  const seals = openings(past, "body_seal"), ekholt = seals.filter(({ visit }) => code(visit).startsWith("E")), bruskar = seals.filter(({ visit }) => code(visit) === "BRU");
  const used = past.visits.flatMap((visit) => [...visit.openings, ...visit.extras].filter((opening) => opening.line && opening.action !== "left" && opening.action !== "cleaned").map((opening) => ({ visit, opening })));
  const shared = used.filter(({ opening }) => opening.line?.size === "7x11x3"), of_model = [...new Set(shared.map(({ visit }) => code(visit)))].map((model) => shared.filter(({ visit }) => code(visit) === model).length);
  const knob = openings(past, "drag_knob_seal").filter(({ visit }) => visit.job === "FULL"), habit = (late: boolean) => knob.filter(({ visit }) => visit.started !== null && visit.started >= Date.UTC(2024, 6, 1) / 864e5 === late);
  const changed = ({ opening }: Seen) => opening.action === "replaced" || opening.action === "wanted";
  const roller = openings(past, "line_roller_bearing"), again = refitted(past), index = monthIndex(past), ratio = timeRatios(past);
  const lead = (supplier: string) => mean(past.shipments.filter((one) => one.supplier.code === supplier).map((one) => one.arrives - one.ordered));
  const dead = past.lines.find((line) => line.part_no === "BRG-7x13x4"), dead_used = used.filter(({ opening }) => opening.line === dead).length / 3;
  const lever = past.visits.filter((visit) => code(visit) === "JAR" && visit.job === "FULL").flatMap((visit) => visit.minutes ?? []);
  const complaint = (model: string) => 100 * share(past.visits.filter((visit) => code(visit) === model), (visit) => visit.source === "complaint");
  return {
    "PT1 Whinbeck %": 100 * share(of("WHI"), failed), "PT1 Dovekin %": 100 * share(of("DOV"), failed), "PT1 Slipdene %": 100 * share(of("SLI"), failed),
    "PT1 ratio": ratioWithin(spinning, (visit) => code(visit) === "WHI", (visit) => `${visit.reel.water} ${visit.reel.rinse}`),
    "PT2 Ekholt %": 100 * share(ekholt, failed), "PT2 pinched of bad %": 100 * share(ekholt.filter(failed), ({ opening }) => opening.pinched), "PT2 Bruskar %": 100 * share(bruskar, failed),
    "PT3 a year": shared.reduce((sum, { opening }) => sum + opening.qty, 0) / 3, "PT3 most of one model %": (100 * Math.max(...of_model)) / shared.length,
    "PT4 batch %": again.batch, "PT4 before %": again.before, "PT4 after %": again.after, "PT5 never": ratio.never, "PT5 sometimes": ratio.sometimes,
    "PT6 raw": share(plain.filter(({ visit }) => code(visit) === "SLI"), failed) / share(plain.filter(({ visit }) => code(visit) !== "SLI"), failed),
    "PT6 unsealed in its water": ratioWithin(unsealed, (visit) => code(visit) === "SLI", water), "PT6 complaint %": complaint("SLI"),
    "PT7 2023": junior(past, 2023), "PT7 2025": junior(past, 2025), "PT8 March": index[2] ?? NaN, "PT8 December": index[11] ?? NaN,
    "PT9 a year": past.visits.filter((visit) => code(visit) === "JAR").length / 3, "PT9 %": 100 * share(of("JAR"), failed), "PT10 before %": 100 * share(habit(false), changed), "PT10 after %": 100 * share(habit(true), changed),
    "PT10 failed before %": 100 * share(habit(false), failed), "PT10 failed after %": 100 * share(habit(true), failed), "PT11 minutes": quantile(lever, 0.5),
    "PT11 short": (quantile(lever, 0.5) * 54) / 60 - past.world.lever_drag_price,
    "PT12 a year": used.filter(({ opening }) => opening.line?.part_no === "LRO-MIX").length / 3, "PT13 Zetfield": lead("ZET"), "PT13 Far Lantern": lead("FLI"),
    "PT14 years at 1.5 a year": (dead?.on_hand ?? NaN) / 1.5, "PT14 a year": dead_used, "PT15 planned %": 100 * share(roller.filter(({ visit }) => visit.source === "planned"), failed),
    "PT15 other %": 100 * share(roller.filter(({ visit }) => visit.source !== "planned"), failed), "PT15 mix %": 100 * share(roller, failed),
  };
}
