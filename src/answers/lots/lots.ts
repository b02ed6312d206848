import type { Engine } from "../../db/engine.ts";
import { grouped } from "../grouped.ts";
import type { WorkMeans } from "../worker-work.ts";
import { carriersOf, lotKey } from "./carriers.ts";
import type { LotName } from "./carriers.ts";
import { byWorst, isSuspected, judgedLot, sidesOf } from "./judged-lot.ts";
import linkedSql from "./linked-fittings.sql?raw";
import { falseAlarms, scanLots, WITHIN_DAYS } from "./lot-scan.ts";
import type { LotScan, ScanWork } from "./lot-scan.ts";
import { byTechnician } from "./lot-shares.ts";
import type { RefittedRow } from "./lot-shares.ts";
import type { NameRow } from "./lot-window.ts";
import { lotReasons } from "./lot-words.ts";
import type { LotRow, Lots } from "./lot.ts";
import namesSql from "./names-written.sql?raw";
import refittedSql from "./refitted.sql?raw";

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
  const scans = await work(groups, { signal, report }), q = falseAlarms(scans);
  const found = groups.map(({ rows: of }, i) => {
    const scan = scans[i] as LotScan, sides = sidesOf(of, scan);
    return { ...judgedLot(of[0] as LotName, sides, scan, q[i] ?? null), technicians: byTechnician(sides.inside, sides.outside) };
  });
  const carriers = await carriersOf(engine, found.filter(isSuspected), signal);
  const listed = found.map((row): LotRow => {
    const more = carriers(row), reels = new Set(more.carriers.map(({ serial, model }) => `${model} ${serial}`)).size;
    return { ...row, ...more, reasons: lotReasons({ ...row, ...more }, [row.technicians, "technician"], reels) };
  });
  listed.sort(byWorst);
  const linked_share = linked && linked.fittings > 0 ? linked.with_serial / linked.fittings : null;
  const note = listed.length > 0 ? "" : linked_share === 0 ? "No reel can be known again: no serial or tag is written where parts were fitted." : "No fitted part was looked at again yet.";
  return { rows: listed, within_days: WITHIN_DAYS, linked_share, note };
}
