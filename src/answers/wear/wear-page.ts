import { grouped } from "../grouped.ts";
import { placeOf, turns } from "./all-wear.ts";
import type { WorkMeans } from "../worker-work.ts";
import { CONDITIONS, levelOf } from "./conditions.ts";
import type { Condition } from "./conditions.ts";
import { curveOf, freeSteps, misfitOf, rugOf } from "./curve.ts";
import { conditionFit, effectsOf } from "./effects.ts";
import { gradePicture } from "./grades.ts";
import { partsOf, telling } from "./life-lines-of.ts";
import { lifeRow } from "./life-row.ts";
import { modelLives } from "./model-lives.ts";
import type { PageRecords, WearLine, WearRecords } from "./wear-records.ts";
import { hasCurve, WEAK_PRIOR } from "../../stats/weibull-life.ts";
import type { FirstSights, Sensitivity, WearBeside, WearCurve, WearPage, WearRow } from "./wear.ts";

const WAYS: Readonly<Record<FirstSights, string>> = {
  planned: "parts count where the reel came for planned work when they were first looked at",
  all: "all parts count, whatever the reel came in for",
  none: "only parts whose fitting was seen here count",
};
/** A fifth more or fewer days than the customer said. */
const GUESSED = 0.2;

/** A row for every level of every condition that has at least two. */
export function groupRows(lines: readonly WearLine[], { position, places, filter }: Pick<PageRecords, "position" | "places" | "filter">): WearRow[] {
  return (Object.keys(CONDITIONS) as Condition[]).flatMap((condition) => {
    const levels = [...grouped(telling(lines), (line) => levelOf(line, condition))];
    if (levels.length < 2) return [];
    return levels.map(([level, some]) => lifeRow(some, { place: placeOf(places, position), clock: filter.clock, group: `${condition}: ${level}` }).row);
  });
}

const answered = (assumption: string, { n, failed, b10, status_text }: WearRow): Sensitivity => ({ assumption, n, failed, b10, note: status_text });

/** The same part under other ways of counting, with what is missing taken well or badly, and with customers who guess too high or low. */
function sensitivityOf(records: PageRecords, overall: WearRow): Sensitivity[] {
  const means = { place: placeOf(records.places, records.position), clock: records.filter.clock }, of = (lines: readonly WearLine[]) => lifeRow(lines, means).row;
  const typical = middle(records.lines), missing = (failed: boolean) => records.lines.map((line): WearLine => (line.left_out !== "clock missing" ? line
    : { ...line, left_out: null, low: failed ? 0 : typical, high: failed ? typical : null }));
  const scaled = (factor: number) => records.lines.map((line) => ({ ...line, low: line.low * factor, high: line.high === null ? null : line.high * factor }));
  const has_missing = overall.clock_missing > 0 && typical > 0;
  return [
    ...records.other_ways.map((way) => answered(WAYS[way.filter.first_sights], of(way.lines))),
    ...(has_missing ? [answered("parts without written exposure: good after the usual exposure", of(missing(false))), answered("parts without written exposure: failed by the usual exposure", of(missing(true)))] : []),
    ...(overall.status === "ok" ? [answered("leaning on how such parts usually wear (shape about 1.5)", lifeRow(records.lines, { ...means, prior: { shape: WEAK_PRIOR.shape } }).row)] : []),
    answered("customers say a fifth too few", of(scaled(1 + GUESSED))), answered("customers say a fifth too many", of(scaled(1 - GUESSED))),
  ];
}

/** Exposure that half of the parts have seen. */
function middle(lines: readonly WearLine[]): number {
  const seen = telling(lines).map(({ low, high, parts }) => ({ at: high ?? low, parts })).sort((a, b) => a.at - b.at), half = partsOf(telling(lines)) >> 1;
  let below = 0;
  return seen.find(({ parts }) => (below += parts) > half)?.at ?? 0;
}

/** The records of one position with the conditions of every part. */
export type PositionRecords = WearRecords & Pick<PageRecords, "position">;

/**
 * How the parts of one position fail along the clock, from records already counted. Plain rows in and out, so it may run in a worker.
 *
 * @throws the signal's reason when called off
 */
export async function wearCurveOf({ lines, position, places, filter }: PositionRecords, means: WorkMeans = {}): Promise<WearCurve> {
  const turn = turns(means, "Fitting how the part wears"), { row: overall, fit } = lifeRow(lines, { place: placeOf(places, position), clock: filter.clock });
  await turn(1, 5);
  const free = freeSteps(lines), drawn = fit && hasCurve(fit) ? fit : null;
  await turn(2, 5);
  return { overall, curve: drawn ? curveOf(drawn, lines) : [], steps: free.steps, rug: rugOf(lines), misfit: drawn && misfitOf(drawn, lines, free) };
}

/** What stands beside that: conditions, models, grades, and the same under other assumptions. @throws the signal's reason when called off */
export async function wearBesideOf(records: PageRecords, overall: WearRow, means: WorkMeans = {}): Promise<WearBeside> {
  const { lines, position } = records, turn = turns(means, "Fitting how the part wears"), conditions = conditionFit(lines), effects = effectsOf(lines, conditions, position);
  await turn(3, 5);
  const models = modelLives(lines, conditions), groups = groupRows(lines, records);
  await turn(4, 5);
  return { groups, effects, models, grades: gradePicture(records.grades), sensitivity: sensitivityOf(records, overall) };
}

/** Everything of one position. @throws the signal's reason when called off */
export async function pageOf(records: PageRecords, means: WorkMeans = {}): Promise<WearPage> {
  const picture = await wearCurveOf(records, means);
  return { ...picture, ...await wearBesideOf(records, picture.overall, means) };
}
