import { compareShares } from "../../stats/compare-shares.ts";
import { grouped } from "../grouped.ts";
import { mantelHaenszel } from "../../stats/mantel-haenszel.ts";
import { countsOf, notOthers, strataOf } from "./peers.ts";
import type { Field, Peer } from "./peers.ts";
import type { CostRow, FaultRow } from "./verdict-records.ts";
import type { FailureCost, LeadingFault, SeasonSide } from "./verdict.ts";

/** Bench minutes a day of waiting (asking, moving, telling the customer) and a comeback (apologising, testing) are taken for; common practice, no source. */
export const COST_WEIGHTS = { waiting_day_min: 5, comeback_min: 20 } as const;
/** A season tells something from this many inspected and this many failures of the others on. */
const SEASON_TELLS = { inspected: 20, others_failed: 3 } as const;
/** So many times as often in one season is the same tale. */
export const SEASON_AGREES = 1.25;

const keyOf = ({ maker, model }: { maker: string | null; model: string }) => JSON.stringify([maker, model]);
const rowsOf = <Row extends { position: string }>(rows: readonly Row[]) => {
  const by = grouped(rows, ({ position }) => position);
  return (position: string): readonly Row[] => by.get(position) ?? [];
};

/** Season by season, oldest first, the peer beside the others, like with like within the season; planned openings only. */
export function seasonSides(field: Field, peer: Peer, left_out: ReadonlySet<string>, widen: number): SeasonSide[] {
  const without = notOthers(field, peer, left_out), planned = (of: Peer, season: number) => countsOf(of.seasons.get(season) ?? new Map(), "planned");
  return [...field.seasons].sort(([a], [b]) => a - b).flatMap(([season, total]) => {
    const all = countsOf(total, "planned"), mine = planned(peer, season), gone = without.map((one) => planned(one, season));
    if (all.inspected === 0) return [];
    const { ratio, low, high, inspected: compared } = mantelHaenszel(strataOf(field, peer, without, "planned", season), { widen });
    return [{
      season, ...mine, others_inspected: gone.reduce((sum, one) => sum - one.inspected, all.inspected),
      others_failed: gone.reduce((sum, one) => sum - one.failed, all.failed), adjusted: { value: ratio, low, high }, compared,
    }];
  });
}

/** Seasons with enough to say anything, and how many of them were worse as well. */
export function seasonTally(seasons: readonly SeasonSide[]): { seasons_told: number; seasons_agree: number } {
  const told = seasons.filter((one) => one.inspected >= SEASON_TELLS.inspected && one.others_failed >= SEASON_TELLS.others_failed);
  return { seasons_told: told.length, seasons_agree: told.filter(({ adjusted }) => adjusted.value !== null && adjusted.value >= SEASON_AGREES).length };
}

/** The commonest fault, beside the same fault on the others. */
export function leadingFault(
  field: Field, peer: Peer, left_out: ReadonlySet<string>, rows: readonly FaultRow[],
  side: { inspected: number; failed: number; others_inspected: number; others_failed: number; opening: string },
): LeadingFault | null {
  const within = rows.filter((row) => side.opening === "*" || row.opening === side.opening), mine = new Set(peer.members);
  const without = new Set(notOthers(field, peer, left_out).map(({ key }) => key)), total = (of: readonly FaultRow[]) => of.reduce((sum, row) => sum + row.failed, 0);
  const own = [...grouped(within.filter((row) => mine.has(keyOf(row))), ({ mode }) => mode)].map(([mode, of]) => ({ mode, failed: total(of) }));
  const first = own.sort((a, b) => b.failed - a.failed || (a.mode < b.mode ? -1 : 1))[0];
  if (!first || side.inspected === 0) return null;
  const failed = Math.min(first.failed, side.inspected), others_failed = total(within.filter((row) => row.mode === first.mode && !without.has(keyOf(row))));
  const p_value = side.others_inspected === 0 ? null
    : compareShares({ failed, inspected: side.inspected }, { failed: Math.min(others_failed, side.others_inspected), inspected: side.others_inspected }).pMid;
  return { mode: first.mode, failed, of: side.failed, others_failed, others_of: side.others_failed, p_value };
}

/** What the failures of a peer cost; a bench minute is worth what the shop's own labour charges say, else 1. */
export function costOf(peer: Peer, rows: readonly CostRow[]): FailureCost {
  const own = rows.filter((row) => peer.members.includes(keyOf(row)));
  const sum = (name: "minutes" | "parts" | "waiting_days" | "comebacks") => own.reduce((total, row) => total + row[name], 0);
  const minutes = sum("minutes"), parts = sum("parts"), waiting_days = sum("waiting_days"), comebacks = sum("comebacks"), minute_worth = own[0]?.minute_worth ?? null, worth = minute_worth ?? 1;
  const money = parts + worth * (minutes + COST_WEIGHTS.waiting_day_min * waiting_days + COST_WEIGHTS.comeback_min * comebacks);
  return { minutes, parts, waiting_days, comebacks, minute_worth, money };
}

/** The rows of each kind by position. */
export function besideRows(records: { faults: readonly FaultRow[]; costs: readonly CostRow[] }) {
  return { faults: rowsOf(records.faults), costs: rowsOf(records.costs) };
}
