import { seededRandom } from "../../stats/random.ts";
import type { StockPast } from "../stock/order-advice.ts";
import type { RestockLine } from "../stock/restock-line.ts";
import type { DeliveryDays, World } from "./world.ts";

/**
 * How long each order takes, drawn from the supplier's own deliveries (all of them: that is how the world was, and no way of
 * ordering knows it beforehand). An order of the same day takes as long for every way of ordering.
 */
export function deliveryDays({ first, last, suppliers }: World, past: StockPast, lines: readonly RestockLine[], seed: number): DeliveryDays {
  const random = seededRandom(seed), tables = suppliers.map(({ supplier }) => {
    const seen = past.deliveries.filter((row) => row.supplier === supplier).map(({ days }) => Math.max(1, days));
    const said = Math.max(1, Math.round(lines.find((line) => line.supplier === supplier)?.lead.days ?? 1));
    return Array.from({ length: last - first + 1 }, () => seen[Math.floor(random() * seen.length)] ?? said);
  });
  return (supplier, day) => {
    const days = tables[supplier]?.[day - first];
    if (days === undefined) throw new RangeError(`deliveryDays: no delivery is known for supplier ${supplier} on day ${day}`);
    return days;
  };
}
