import type { ComebackRow, Comebacks } from "../answers/comebacks/comeback.ts";
import type { ReportTable } from "./table.ts";

const CURVE = ["position", "maker", "model", "age", "at_risk", "mean_cumulative", "low", "high", "note"];
const SHARES = [
  "position", "maker", "model", "position_name", "failures", "back", "share", "share_low", "share_high", "within_days", "reels", "later_failures", "trend",
  "laplace", "laplace_p", "shape", "shape_p", "lewis_robinson", "minutes", "parts_cost", "note",
];

function curve({ position, maker, model, reels, curve: points }: ComebackRow): ReportTable["rows"][number][] {
  if (points.length > 0) return points.map((point) => ({ position, maker, model, ...point, note: "" }));
  return [{ position, maker, model, age: null, at_risk: reels, mean_cumulative: null, low: null, high: null, note: "no failure after the first look" }];
}

function share({ share: figure, trend, parts, curve: _, ...row }: ComebackRow, within_days: number, linked: number | null) {
  const few = figure.value === null ? "under 10 failures: the count is all there is" : "";
  const unlinked = linked !== null && linked < 1 ? `only ${(100 * linked).toFixed(0)} % of tickets have a serial` : "";
  return {
    ...row, share: figure.value, share_low: figure.low, share_high: figure.high, within_days, later_failures: trend.events, trend: trend.word,
    laplace: trend.laplace, laplace_p: trend.laplace_p, shape: trend.shape, shape_p: trend.shape_p, lewis_robinson: trend.lewis_robinson,
    parts_cost: parts, note: [few, unlinked].filter((part) => part !== "").join("; "),
  };
}

/** Mean number of later failures by days since the first look, and shares that came back within 90 days. */
export function comebackTables({ rows, within_days, linked_share }: Comebacks): readonly [ReportTable, ReportTable] {
  return [
    { file: "recurrences.csv", columns: CURVE, rows: rows.flatMap(curve) },
    { file: "comebacks.csv", columns: SHARES, rows: rows.map((row) => share(row, within_days, linked_share)) },
  ];
}
