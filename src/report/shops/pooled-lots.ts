import { byWorst, isSuspected, judgedLot, sidesOf } from "../../answers/lots/judged-lot.ts";
import type { LotName } from "../../answers/lots/carriers.ts";
import { falseAlarms, scanEach } from "../../answers/lots/lot-scan.ts";
import type { LotGroup, LotScan } from "../../answers/lots/lot-scan.ts";
import { byShop } from "../../answers/lots/lot-shares.ts";
import type { RefittedRow } from "../../answers/lots/lot-shares.ts";
import type { NameRow } from "../../answers/lots/lot-window.ts";
import { lotReasons } from "../../answers/lots/lot-words.ts";
import type { Engine } from "../../db/engine.ts";
import { lotTableOf } from "../lot-table.ts";
import type { TableLot } from "../lot-table.ts";
import type { ReportTable } from "../table.ts";
import carriersSql from "./pooled-carriers.sql?raw";
import lotNamesSql from "./pooled-lot-names.sql?raw";
import lotsWrittenSql from "./pooled-lots-written.sql?raw";
import namesWrittenSql from "./pooled-names-written.sql?raw";
import refittedSql from "./pooled-refitted.sql?raw";

const nameOf = ({ size_or_part, supplier }: LotName) => ({ size_or_part, supplier });

async function judged(engine: Engine, lot: LotName, rows: readonly RefittedRow[], scan: LotScan, q_value: number | null): Promise<TableLot> {
  const sides = sidesOf(rows, scan), found = { ...judgedLot(lot, sides, scan, q_value), shops: byShop(sides.inside, sides.outside), technicians: [] };
  const asked = { ...nameOf(lot), from_date: found.from, to_date: found.to }, suspected = isSuspected(found);
  const [carried] = suspected ? await engine.rows<{ still_carried: number; reels: number }>(carriersSql, asked) : [];
  const written = suspected ? await engine.rows<{ lot: string }>(lotsWrittenSql, asked) : [], lots_written = written.map((one) => one.lot);
  return { ...found, lots_written, still_carried: carried?.still_carried ?? 0, reasons: lotReasons({ ...found, lots_written }, [found.shops, "shop"], carried?.reels ?? 0) };
}

/**
 * Bad batches over all shops: the same size (or number) from the same supplier, fitted in the same months anywhere. What is expected
 * and what is shuffled stays within each shop, so that a shop whose parts fail sooner makes no month look bad.
 *
 * Parts and suppliers are the same where they are written the same. One lot's rows are in memory at a time.
 */
export async function pooledLots(engine: Engine): Promise<ReportTable> {
  const lots = await engine.rows<LotName>(lotNamesSql);
  const rowsOf = (lot: LotName) => engine.rows<RefittedRow>(refittedSql, nameOf(lot));
  const groupAt = async (at: number): Promise<LotGroup> => {
    const lot = lots[at] as LotName;
    return { rows: await rowsOf(lot), names: await engine.rows<NameRow>(namesWrittenSql, nameOf(lot)) };
  };
  const scans = await scanEach(lots.length, groupAt, {}), q = falseAlarms(scans), found: TableLot[] = [];
  for (const [at, lot] of lots.entries()) found.push(await judged(engine, lot, await rowsOf(lot), scans[at] as LotScan, q[at] ?? null));
  return lotTableOf(found.sort(byWorst));
}
