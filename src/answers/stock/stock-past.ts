import type { Engine } from "../../db/engine.ts";
import type { ShelfRow } from "./chosen-part.ts";
import deliveriesSql from "./deliveries.sql?raw";
import groupPositionsSql from "./group-positions.sql?raw";
import intakeSql from "./intake.sql?raw";
import type { PastDelivery, PastUse, StockPast } from "./order-advice.ts";
import pastUseSql from "./past-use.sql?raw";
import shelfSql from "./shelf.sql?raw";

/** Everything the stock advice goes by, of the whole past up to `to`, for `orderAdvice` on any day of it. */
export async function stockPast(engine: Engine, to: string, signal?: AbortSignal): Promise<StockPast> {
  const [shelf, use, intake, deliveries, positions] = await Promise.all([
    engine.rows<ShelfRow>(shelfSql, {}, signal),
    engine.rows<PastUse>(pastUseSql, { to_date: to }, signal),
    engine.rows<StockPast["intake"][number]>(intakeSql, { to_date: to }, signal),
    engine.rows<PastDelivery>(deliveriesSql, { as_of: to }, signal),
    engine.rows<StockPast["positions"][number]>(groupPositionsSql, {}, signal),
  ]);
  return { shelf, use, intake, deliveries, positions };
}
