import { version } from "../../../package.json";
import type { ShopLine } from "./shops-table.ts";

const firstOf = (days: readonly (string | null)[], later: boolean): string | null => {
  const known = days.filter((day) => day !== null).sort();
  return (later ? known.at(-1) : known[0]) ?? null;
};

/** Counts of all shops, days, settings and versions, as plain data in a fixed order. */
export function shopsSummary(shops: readonly ShopLine[], { threads, memory, pooled_only }: { threads: number; memory: string; pooled_only: boolean }, engine: "native" | "wasm") {
  const sum = (name: "tickets" | "findings" | "inspections" | "failed" | "rows_read" | "rows_to_fix") => shops.reduce((total, shop) => total + shop[name], 0);
  return {
    versions: { saltbench: version },
    engine: engine === "native" ? "native DuckDB" : "the browser's DuckDB: there is no native one for this kind of machine",
    date_range: { from: firstOf(shops.map(({ from }) => from), false), to: firstOf(shops.map(({ to }) => to), true) },
    counts: {
      shops: shops.length, shops_with_tickets: shops.filter(({ tickets }) => tickets > 0).length, tickets: sum("tickets"), findings: sum("findings"),
      inspections: sum("inspections"), failed: sum("failed"), rows_read: sum("rows_read"), rejected: sum("rows_to_fix"),
    },
    settings: { threads, memory, own_reports: !pooled_only },
    comparison: "Models are compared with others under the same conditions in the same shop; batches and minutes within shops too.",
  };
}
