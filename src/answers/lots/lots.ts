import type { Engine } from "../../db/engine.ts";
import { falseDiscovery } from "../../stats/false-discovery.ts";
import { grouped } from "../grouped.ts";
import type { WorkMeans } from "../worker-work.ts";
import { carriersOf, lotKey } from "./carriers.ts";
import type { LotName } from "./carriers.ts";
import linkedSql from "./linked-fittings.sql?raw";
import { scanLots, SURE, WITHIN_DAYS } from "./lot-scan.ts";
import type { LotScan, ScanWork } from "./lot-scan.ts";
import { byModel, byTechnician, expectedShare, failedIn, fittedIn } from "./lot-shares.ts";
import type { RefittedRow } from "./lot-shares.ts";
import { firstDay, lastDay } from "./lot-window.ts";
import type { Months, NameRow } from "./lot-window.ts";
import { lotReasons } from "./lot-words.ts";
import type { LotMonths, LotRow, Lots } from "./lot.ts";
import namesSql from "./names-written.sql?raw";
import refittedSql from "./refitted.sql?raw";

/** A batch is called bad from so many fittings in its months, when it fails so many times as often as is to be expected. */
const INSIDE = 8, FAR = 1.25;

const suspected = (verdict: LotRow["verdict"]): boolean => verdict === "bad batch" || verdict === "perhaps, not yet sure";
const monthsOf = (months: Months | null): LotMonths | null => (months === null ? null : { earliest: firstDay(months.from), latest: firstDay(months.to) });

/** What is known before the carriers are looked up. */
function judged({ size_or_part, supplier }: LotName, all: readonly RefittedRow[], { scan, window }: LotScan, q_value: number | null): Omit<LotRow, "reasons" | "carriers" | "lots_written"> {
  const within = ({ month }: RefittedRow) => month >= window.from && month <= window.to, rows = all.filter(({ soon }) => soon);
  const inside = rows.filter(within), outside = scan?.window ? rows.filter((row) => !within(row)) : [];
  const fitted = fittedIn(inside), failed_early = failedIn(inside), share = fitted === 0 ? null : failed_early / fitted, expected_share = expectedShare(inside, outside);
  const far = share !== null && expected_share !== null && share > FAR * expected_share && fitted >= INSIDE;
  const verdict = scan === null ? "too few" : !far || scan.p === null || scan.p >= SURE ? "no different" : q_value !== null && q_value < SURE ? "bad batch" : "perhaps, not yet sure";
  const ends = suspected(verdict) ? window : { began: null, ended: null };
  return {
    size_or_part, supplier, from: firstDay(window.from), to: lastDay(window.to), began: monthsOf(ends.began), ended: monthsOf(ends.ended),
    fitted, failed_early, share, expected_share, p_value: scan?.p ?? null, q_value, verdict, models: byModel(inside, outside), technicians: byTechnician(inside, outside),
  };
}

const ORDER = ["bad batch", "perhaps, not yet sure", "no different", "too few"] as const;

/**
 * Looks for a bad batch: months of fitting whose parts of one size (or number) and supplier failed early beyond what the same
 * parts on the same models do. Lot numbers are mostly not written, so the month is what is known.
 *
 * @param means `work`: where the months are scanned, a worker in the browser (`lotsInWorker`); here by default
 * @returns one row for each size (or part) and supplier, worst first; dates are whole months
 * @throws the signal's reason when called off
 */
export async function lots(engine: Engine, signal?: AbortSignal, { work = scanLots, report }: Pick<WorkMeans, "report"> & { readonly work?: ScanWork } = {}): Promise<Lots> {
  report?.({ step: "Counting what was fitted", done: 0, total: null });
  const [rows, names, [linked]] = await Promise.all([
    engine.rows<RefittedRow>(refittedSql, { within_days: WITHIN_DAYS }, signal), engine.rows<NameRow>(namesSql, {}, signal),
    engine.rows<{ fittings: number; with_serial: number }>(linkedSql, {}, signal),
  ]);
  const written = grouped(names, lotKey), groups = [...grouped(rows, lotKey)].filter(([, of]) => of.some(({ soon }) => soon)).map(([key, of]) => ({ rows: of, names: written.get(key) ?? [] }));
  const scans = await work(groups, { signal, report }), q = falseDiscovery(scans.map(({ scan }) => scan?.p ?? null));
  const found = groups.map((group, i) => judged(group.rows[0] as LotName, group.rows, scans[i] as LotScan, q[i] ?? null));
  const carriers = await carriersOf(engine, found.filter(({ verdict }) => suspected(verdict)), signal);
  const listed = found.map((row): LotRow => {
    const more = carriers(row);
    return { ...row, ...more, reasons: lotReasons({ ...row, ...more }) };
  });
  listed.sort((a, b) => ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict) || (a.p_value ?? 1) - (b.p_value ?? 1) || b.fitted - a.fitted);
  const linked_share = linked && linked.fittings > 0 ? linked.with_serial / linked.fittings : null;
  const note = listed.length > 0 ? "" : linked_share === 0 ? "No reel can be known again: no serial or tag is written where parts were fitted." : "No fitted part was looked at again yet.";
  return { rows: listed, within_days: WITHIN_DAYS, linked_share, note };
}
