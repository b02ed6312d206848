import type { Engine } from "../../db/engine.ts";
import type { ShelfRow } from "./chosen-part.ts";
import deliveriesSql from "./deliveries.sql?raw";
import intakeSql from "./intake.sql?raw";
import type { PastDelivery, PastUse, StockPast } from "./order-advice.ts";
import pastUseSql from "./past-use.sql?raw";
import type { IntakeDay } from "./season-factor.ts";
import shelfSql from "./shelf.sql?raw";

/** Everything the stock advice goes by, of the whole past up to `to`, for `orderAdvice` on any day of it. */
export async function stockPast(engine: Engine, to: string, signal?: AbortSignal): Promise<StockPast> {
  const [shelf, use, intake, deliveries] = await Promise.all([
    engine.rows<ShelfRow>(shelfSql, {}, signal),
    engine.rows<PastUse>(pastUseSql, {}, signal),
    engine.rows<IntakeDay>(intakeSql, { to_date: to }, signal),
    engine.rows<PastDelivery>(deliveriesSql, { as_of: to }, signal),
  ]);
  return { shelf, use: use.filter((row) => row.day <= to), intake, deliveries };
}
