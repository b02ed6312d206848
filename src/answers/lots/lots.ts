import type { Engine, Report } from "../../db/engine.ts";
import { falseDiscovery } from "../../stats/false-discovery.ts";
import { seededRandom } from "../../stats/random.ts";
import { windowScan } from "../../stats/window-scan.ts";
import type { Scan } from "../../stats/window-scan.ts";
import { grouped } from "../grouped.ts";
import carriersSql from "./carriers.sql?raw";
import linkedSql from "./linked-fittings.sql?raw";
import { byModel, byTechnician, expectedShare, failedIn, fittedIn, kindOf } from "./lot-shares.ts";
import type { RefittedRow } from "./lot-shares.ts";
import { batchMonths, firstDay, lastDay, numbered, worstMonths } from "./lot-window.ts";
import type { LotWindow, Months, NameRow } from "./lot-window.ts";
import { lotReasons } from "./lot-words.ts";
import type { LotCarrier, LotMonths, LotRow, Lots } from "./lot.ts";
import namesSql from "./names-written.sql?raw";
import refittedSql from "./refitted.sql?raw";

/** Fourteen months: a part that fails sooner failed early; the longest window is nine months of fitting. */
const WITHIN_DAYS = 425, LONGEST = 9;
/** From so many fittings looked at again, and so many early failures among them, a window is looked for; and so many within it. */
const ENOUGH = { fitted: 30, failed: 8, inside: 8 } as const;
/** A first look at few shufflings; only what may be unusual is shuffled more often. */
const FIRST_TRIES = 99, TRIES = 1999, UNUSUAL = 0.1;
const SURE = 0.05, FAR = 1.25;
const SEED = 2404;

interface Scanned { readonly rows: readonly RefittedRow[]; readonly scan: Scan | null; readonly window: LotWindow }

/** The worst window of one size (or part) and supplier; null scan where there is too little to look. At least one of the fittings was looked at again soon. */
function scanned(all: readonly RefittedRow[], names: readonly NameRow[]): Scanned {
  const rows = all.filter(({ soon }) => soon), months = rows.map(({ month }) => month), start = Math.min(...months), end = Math.max(...months);
  if (fittedIn(rows) < ENOUGH.fitted || failedIn(rows) < ENOUGH.failed) return { rows, scan: null, window: worstMonths(null, start, end) };
  const kind = numbered(rows.map(kindOf)), like = numbered(rows.map(({ position, fished }) => `${position} ${fished}`));
  const fittings = rows.flatMap((row, i) => Array.from({ length: row.fitted }, () => (
    { stretch: row.month - start, kind: kind[i] ?? 0, like: like[i] ?? 0, failed: row.failed })));
  const first = windowScan(fittings, LONGEST, FIRST_TRIES, seededRandom(SEED));
  const scan = first.p !== null && first.p <= UNUSUAL ? windowScan(fittings, LONGEST, TRIES, seededRandom(SEED + 1)) : first;
  const dated = scan.p !== null && scan.p < SURE ? batchMonths(all, names, LONGEST) : null;
  return { rows, scan, window: dated ?? worstMonths(scan, start, end) };
}

type Named = Pick<LotRow, "size_or_part" | "supplier">;
const monthsOf = (months: Months | null): LotMonths | null => (months === null ? null : { earliest: firstDay(months.from), latest: firstDay(months.to) });

/** What is known before the carriers are looked up. */
function found({ size_or_part, supplier }: Named, { rows, scan, window }: Scanned, q_value: number | null): Omit<LotRow, "reasons" | "carriers" | "lots_written"> {
  const inside = rows.filter(({ month }) => month >= window.from && month <= window.to), outside = scan?.window ? rows.filter((row) => !inside.includes(row)) : [];
  const fitted = fittedIn(inside), failed_early = failedIn(inside), share = fitted === 0 ? null : failed_early / fitted, expected_share = expectedShare(inside, outside);
  const far = share !== null && expected_share !== null && share > FAR * expected_share && fitted >= ENOUGH.inside;
  const verdict = scan === null ? "too few" : !far || scan.p === null || scan.p >= SURE ? "no different" : q_value !== null && q_value < SURE ? "bad batch" : "perhaps, not yet sure";
  const suspected = verdict === "bad batch" || verdict === "perhaps, not yet sure";
  return {
    size_or_part, supplier, from: firstDay(window.from), to: lastDay(window.to), began: suspected ? monthsOf(window.began) : null, ended: suspected ? monthsOf(window.ended) : null,
    fitted, failed_early, share, expected_share, p_value: scan?.p ?? null, q_value, verdict, models: byModel(inside, outside), technicians: byTechnician(inside, outside),
  };
}

type CarrierRow = LotCarrier & { readonly lot: string | null; readonly carried: boolean };

/** Reels that still carry a part of the window, and the lot words written beside all of them. */
async function carried(engine: Engine, row: ReturnType<typeof found>, signal: AbortSignal | undefined): Promise<Pick<LotRow, "carriers" | "lots_written">> {
  if (row.verdict !== "bad batch" && row.verdict !== "perhaps, not yet sure") return { carriers: [], lots_written: [] };
  const values = { size_or_part: row.size_or_part, supplier: row.supplier, from_date: row.from, to_date: row.to };
  const list = await engine.rows<CarrierRow>(carriersSql, values, signal);
  const lots = [...grouped(list.filter(({ lot }) => lot !== null), ({ lot }) => lot as string)].sort(([, a], [, b]) => b.length - a.length);
  return { carriers: list.filter((one) => one.carried).map(({ lot: _, carried: __, ...one }) => one), lots_written: lots.map(([lot]) => lot) };
}

const ORDER = ["bad batch", "perhaps, not yet sure", "no different", "too few"] as const;

/**
 * Looks for a bad batch: months of fitting whose parts of one size (or number) and supplier failed early beyond what the same
 * parts on the same models do. Lot numbers are mostly not written, so the month is what is known.
 *
 * @returns one row for each size (or part) and supplier, worst first; dates are whole months
 * @throws the signal's reason when called off
 */
export async function lots(engine: Engine, signal?: AbortSignal, report?: Report): Promise<Lots> {
  const [rows, names, [linked]] = await Promise.all([
    engine.rows<RefittedRow>(refittedSql, { within_days: WITHIN_DAYS }, signal), engine.rows<NameRow>(namesSql, {}, signal),
    engine.rows<{ fittings: number; with_serial: number }>(linkedSql, {}, signal),
  ]);
  const keyOf = ({ size_or_part, supplier }: Named) => JSON.stringify([size_or_part, supplier]), written = grouped(names, keyOf);
  const groups = [...grouped(rows, keyOf)].filter(([, of]) => of.some(({ soon }) => soon)), looks: (readonly [Named, Scanned])[] = [];
  for (const [key, group] of groups) {
    report?.({ step: "Looking for bad batches", done: looks.length, total: groups.length });
    await new Promise((turn) => setTimeout(turn));
    signal?.throwIfAborted();
    looks.push([group[0] as Named, scanned(group, written.get(key) ?? [])]);
  }
  const q = falseDiscovery(looks.map(([, { scan }]) => scan?.p ?? null)), listed: LotRow[] = [];
  for (const [i, [named, look]] of looks.entries()) {
    const row = found(named, look, q[i] ?? null), more = await carried(engine, row, signal);
    listed.push({ ...row, ...more, reasons: lotReasons({ ...row, ...more }) });
  }
  listed.sort((a, b) => ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict) || (a.p_value ?? 1) - (b.p_value ?? 1) || b.fitted - a.fitted);
  const linked_share = linked && linked.fittings > 0 ? linked.with_serial / linked.fittings : null;
  const note = listed.length > 0 ? "" : linked_share === 0 ? "No reel can be known again: no serial or tag is written where parts were fitted." : "No fitted part was looked at again yet.";
  return { rows: listed, within_days: WITHIN_DAYS, linked_share, note };
}
