import type { Engine } from "../../db/engine.ts";
import { rowsStream } from "../../db/rows-stream.ts";
import { grouped } from "../grouped.ts";
import carriersSql from "./carriers.sql?raw";
import type { LotCarrier, LotRow } from "./lot.ts";

/** What a lot is known by. */
export type LotName = Pick<LotRow, "size_or_part" | "supplier">;
export const lotKey = ({ size_or_part, supplier }: LotName): string => JSON.stringify([size_or_part, supplier]);

/** One row of `carriers.sql`. */
type CarrierRow = LotCarrier & LotName & { readonly lot: string | null; readonly carried: boolean };
type Carried = Pick<LotRow, "carriers" | "lots_written">;

const EMPTY = "-- Forgets which lots were suspected.\ndelete from suspected";
const COLUMNS = { size_or_part: "varchar", supplier: "varchar", from_date: "date", to_date: "date" } as const;

/**
 * Reels that still carry a part of a suspected batch, and the lot words written beside all of its parts, most frequent first.
 *
 * @param lots all that are suspected; they are asked together, since the records are gone through once for each asking
 * @returns what is known of a lot; nothing of one that was not asked for
 */
export async function carriersOf(
  engine: Engine, lots: readonly (LotName & Pick<LotRow, "from" | "to">)[], signal?: AbortSignal,
): Promise<(lot: LotName) => Carried> {
  if (lots.length === 0) return () => ({ carriers: [], lots_written: [] });
  const asked = rowsStream(COLUMNS, lots.map(({ size_or_part, supplier, from, to }) => ({ size_or_part, supplier, from_date: from, to_date: to })));
  const rows = await engine.transaction(async (inside) => {
    await inside.run([EMPTY]);
    await inside.load("suspected", asked, lots.length);
    return inside.rows<CarrierRow>(carriersSql, {}, signal);
  }, signal);
  const known = grouped(rows, lotKey);
  return (lot) => {
    const list = known.get(lotKey(lot)) ?? [], written = [...grouped(list.filter(({ lot: name }) => name !== null), ({ lot: name }) => name as string)].sort(([a, one], [b, other]) => other.length - one.length || (a < b ? -1 : 1));
    const carriers = list.filter(({ carried }) => carried).map(({ size_or_part: _, supplier: __, lot: ___, carried: ____, ...one }) => one);
    return { carriers, lots_written: written.map(([name]) => name) };
  };
}
