import { wearOf } from "../answers/wear/all-wear.ts";
import { fittedSteps } from "../answers/wear/fitted-steps.ts";
import { conditionFit, effectsOf } from "../answers/wear/effects.ts";
import { partsOf, telling } from "../answers/wear/life-lines-of.ts";
import { ALL_WEAR, wearRecords } from "../answers/wear/wear-records.ts";
import type { WearLine, WearRecords } from "../answers/wear/wear-records.ts";
import { groupRows } from "../answers/wear/wear-page.ts";
import { CLOCKS } from "../answers/wear/wear.ts";
import type { Clock, WearRow } from "../answers/wear/wear.ts";
import { grouped } from "../answers/grouped.ts";
import type { Engine } from "../db/engine.ts";
import type { ReportTable } from "./table.ts";

const WEAR = [
  "position", "clock", "group", "method", "n", "failed", "shape", "shape_se", "scale", "scale_low", "scale_high", "b10", "b10_low", "b10_high", "log_likelihood",
  "position_name", "status", "shape_low", "shape_high", "b20", "b20_low", "b20_high", "b50", "b50_low", "b50_high", "b10_at_least", "b10_at_most", "longest",
  "unlinked", "failed_without_exposure", "clock_missing", "chosen_by_fault", "note",
];
const EFFECTS = ["position", "term", "coefficient", "se", "time_ratio", "time_ratio_low", "time_ratio_high", "clock", "n", "failed", "note"];
const CURVE = ["position", "exposure", "fitted", "fitted_low", "fitted_high", "observed", "n", "clock", "note"];
/** Points of a curve in the report. */
const MOST_STEPS = 20;
/** A clock with fewer parts leaves the position to the next clock. */
const FEWEST_PARTS = 10;

function wearLine(row: WearRow) {
  const { shape, scale, b10, b20, b50, b10_bound, ...rest } = row;
  return {
    ...rest, shape: shape.value, shape_low: shape.low, shape_high: shape.high, scale: scale.value, scale_low: scale.low, scale_high: scale.high,
    b10: b10.value, b10_low: b10.low, b10_high: b10.high, b20: b20.value, b20_low: b20.low, b20_high: b20.high, b50: b50.value, b50_low: b50.low, b50_high: b50.high,
    b10_at_least: b10_bound.low, b10_at_most: b10_bound.high, note: [row.note, b10.beyond ? "B10 beyond the records" : ""].filter((part) => part !== "").join("; "),
  };
}

const effectLines = (position: string, lines: readonly WearLine[], clock: Clock) => effectsOf(lines, conditionFit(lines), position).map((effect) => ({
  position, term: `${effect.condition}: ${effect.level}`, coefficient: effect.coefficient, se: effect.se, time_ratio: effect.time_ratio.value,
  time_ratio_low: effect.time_ratio.low, time_ratio_high: effect.time_ratio.high, clock, n: effect.n, failed: effect.failed,
  note: [effect.coefficient === null ? effect.status : "", effect.note].filter((part) => part !== "").join("; "),
}));

const curveLines = (position: string, lines: readonly WearLine[], clock: Clock) => {
  const { status, points } = fittedSteps(lines, MOST_STEPS);
  return points.map((point) => ({ ...point, position, clock, note: point.fitted === null ? `no curve: ${status}` : "" }));
};

/** For every position the first clock on which enough of its parts are known, and its lines there. */
function clockOf(all: ReadonlyMap<Clock, WearRecords>): { position: string; clock: Clock; lines: readonly WearLine[] }[] {
  const by = [...all].map(([clock, records]) => [clock, grouped(records.lines, ({ position }) => position)] as const);
  const positions = [...new Set(by.flatMap(([, lines]) => [...lines.keys()]))].sort();
  return positions.flatMap((position) => {
    const ways = by.map(([clock, lines]) => ({ position, clock, lines: lines.get(position) ?? [] })), enough = ways.find(({ lines }) => partsOf(telling(lines)) >= FEWEST_PARTS);
    const most = enough ?? ways.find(({ lines }) => telling(lines).length > 0);
    return most ? [most] : [];
  });
}

/** How parts wear, a line a position and clock, or a level of a condition. */
export const wearTable = (rows: readonly WearRow[]): ReportTable => ({ file: "wear.csv", columns: WEAR, rows: rows.map(wearLine) });

/** How parts wear on every clock, what it hangs on, and the curves with the steps beside them. */
export async function wearTables(engine: Engine): Promise<readonly ReportTable[]> {
  const all = new Map<Clock, WearRecords>(), rows: WearRow[] = [];
  for (const clock of CLOCKS) {
    const records = await wearRecords(engine, { ...ALL_WEAR, clock }, { position: null, conditions: true });
    all.set(clock, records);
    rows.push(...(await wearOf(records)).rows);
  }
  const chosen = clockOf(all).filter(({ position }) => rows.some((row) => row.position === position));
  const groups = chosen.flatMap(({ position, clock, lines }) => groupRows(lines, { position, places: all.get(clock)?.places ?? [], filter: { ...ALL_WEAR, clock } }));
  return [
    wearTable([...rows, ...groups]),
    { file: "wear-effects.csv", columns: EFFECTS, rows: chosen.flatMap(({ position, lines, clock }) => effectLines(position, lines, clock)) },
    { file: "wear-curve.csv", columns: CURVE, rows: chosen.flatMap(({ position, lines, clock }) => curveLines(position, lines, clock)) },
  ];
}
