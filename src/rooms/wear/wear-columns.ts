import { modelName } from "../../answers/model-name.ts";
import type { AdvicePosition } from "../../answers/wear/advice.ts";
import type { Clock, CurvePoint, GradePicture, Life, Limits, ModelLife, StepPoint, WearEffect, WearRow } from "../../answers/wear/wear.ts";
import { DASH, FEWEST_FOR_PERCENT, number, percent, percentRange, range } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";
import { DUE_STATUS } from "./advice-words.ts";
import { GRADES } from "./grades-chart.ts";
import { rinseName } from "./rinse-chart.ts";
import { UNITS } from "./wear-filters.ts";
import { exposure, likelyRange, lifeText, withUnit } from "./wear-words.ts";

const right = { align: "right" } as const;
const count = <R>(key: string, label: string, value: (row: R) => number): Column<R> => ({ key, label, ...right, value, text: (row) => number(value(row)) });
const life = (key: "b10" | "b20" | "b50", label: string, unit: string): Column<WearRow> =>
  ({ key, label, unit, ...right, value: (row) => row[key].value, text: (row) => lifeText(row[key]) });
const likely = <R>(limits: (row: R) => Limits | Life): Column<R> =>
  ({ key: "likely", label: "Likely", value: (row) => limits(row).low, text: (row) => likelyRange(limits(row)) || DASH });
const times = (value: number | null) => number(value, 1);

/** Why there is no figure, or that the part does not wear with this clock; the counts left out stand with the curve. */
const status: Column<WearRow> = { key: "status", label: "Remark", wide: true, sortable: false, value: (row) => row.status_text || null, text: (row) => row.status_text || " " };
const figures = (clock: Clock): readonly Column<WearRow>[] => [
  life("b10", "1 in 10 failed by", UNITS[clock].many), likely((row) => row.b10), life("b50", "Half by", UNITS[clock].many),
  count("n", "Parts", (row) => row.n), count("failed", "Failed", (row) => row.failed),
];

/** One line a position. */
export const positionColumns = (clock: Clock): readonly Column<WearRow>[] =>
  [{ key: "position", label: "Part", value: (row) => row.position_name }, ...figures(clock), status];

/** One line a rinsing habit. */
export const rinseColumns = (clock: Clock): readonly Column<WearRow>[] =>
  [{ key: "habit", label: "Rinsed", value: rinseName, sortable: false }, ...figures(clock), status];

const LEVELS: Readonly<Record<string, string>> = { rinse: "rinsed", water: "water", sealed: "sealed", tier: "price band" };
const chance = ({ low, high, value }: Limits) => value === null ? "too little to say" : low !== null && high !== null && (low > 1 || high < 1) ? "more than chance" : "could be chance";

/** Conditions beside their reference, as life. */
export const effectColumns = (clock: Clock): readonly Column<WearEffect>[] => [
  { key: "level", label: "Condition", value: (row) => `${LEVELS[row.condition] ?? row.condition}: ${row.level}` },
  { key: "ratio", label: `One ${clock === "months" ? "month" : "day"} wears like`, unit: `${clock === "months" ? "months" : "days"} otherwise`, ...right, value: (row) => row.time_ratio.value, text: (row) => times(row.time_ratio.value) },
  { key: "likely", label: "Likely", value: (row) => row.time_ratio.low, text: (row) => range(row.time_ratio.low, row.time_ratio.high, 1) },
  count("n", "Parts", (row) => row.n), count("failed", "Failed", (row) => row.failed),
  { key: "told", label: "Remark", wide: true, sortable: false, value: (row) => [chance(row.time_ratio), row.note].filter((word) => word !== "").join("; ") },
];

/** Models beside all models, like conditions compared. */
export const MODEL_COLUMNS: readonly Column<ModelLife>[] = [
  { key: "model", label: "Model", value: modelName },
  { key: "ratio", label: "Lasts", unit: "times as long as on all models", ...right, value: (row) => row.life_ratio.value, text: (row) => number(row.life_ratio.value, 2) },
  { key: "likely", label: "Likely", value: (row) => row.life_ratio.low, text: (row) => range(row.life_ratio.low, row.life_ratio.high, 2) },
  count("n", "Parts", (row) => row.n), count("failed", "Failed", (row) => row.failed),
  { key: "told", label: "Remark", value: (row) => chance(row.life_ratio) },
];

/** One exposure of the curve with what was seen there. */
export interface CurveRow { readonly exposure: number; readonly point: CurvePoint | null; readonly step: StepPoint | null }

/** The numbers of the picture: each point of the curve with the step it stands on, or the steps alone. */
export function curveRows(curve: readonly CurvePoint[], steps: readonly StepPoint[]): readonly CurveRow[] {
  if (curve.length === 0) return steps.map((step) => ({ exposure: step.exposure, point: null, step }));
  return curve.map((point) => ({ exposure: point.exposure, point, step: point.beyond ? null : steps.findLast((one) => one.exposure <= point.exposure) ?? null }));
}

const told = ({ step }: CurveRow) => (step !== null && step.n >= FEWEST_FOR_PERCENT ? step.observed : null);

/** Share failed by exposure. */
export const curveColumns = (clock: Clock): readonly Column<CurveRow>[] => [
  { key: "exposure", label: "By", unit: UNITS[clock].many, ...right, value: (row) => row.exposure, text: (row) => exposure(row.exposure) },
  { key: "fitted", label: "Failed, fitted", ...right, value: (row) => row.point?.fitted ?? null, text: (row) => percent(row.point?.fitted) },
  { key: "likely", label: "Likely", value: (row) => row.point?.low ?? null, text: (row) => percentRange(row.point?.low, row.point?.high) },
  { key: "observed", label: "As seen", ...right, value: told, text: (row) => percent(told(row)) },
  { key: "n", label: "Behind it", ...right, value: (row) => row.step?.n ?? null, text: (row) => number(row.step?.n) },
  { key: "beyond", label: "Remark", value: (row) => (row.point?.beyond ? "beyond the records" : null), text: (row) => (row.point?.beyond ? "beyond the records" : " ") },
];

type Band = GradePicture["bands"][number];
const inspected = (band: Band) => band.counts.reduce((sum, one) => sum + one, 0);

/** Grades as counted in bands of exposure. */
export const bandColumns = (clock: Clock): readonly Column<Band>[] => [
  { key: "band", label: "From, to", unit: UNITS[clock].many, value: (row) => row.from, text: (row) => range(row.from, row.to) },
  ...GRADES.map((word, grade): Column<Band> => count(`grade_${grade}`, word, (row) => row.counts[grade] ?? 0)),
  count("n", "Inspected", inspected),
];

/** What sets the advice, soonest first. */
export const ADVICE_COLUMNS: readonly Column<AdvicePosition>[] = [
  { key: "position", label: "Part", value: (row) => row.position_name },
  { key: "due", label: "Reached after", ...right, value: (row) => row.due.value, text: (row) => (row.due.value === null ? DUE_STATUS[row.status] : withUnit(row.due.value, row.clock)) },
  { key: "likely", label: "Likely", value: (row) => row.due.low, text: (row) => likelyRange(row.due) || DASH },
  { key: "longest", label: "Longest seen", ...right, value: (row) => row.longest, text: (row) => exposure(row.longest) },
  count("n", "Parts", (row) => row.n), count("failed", "Failed", (row) => row.failed),
];
