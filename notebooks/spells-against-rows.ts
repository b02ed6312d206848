import { conditionFit, effectsOf } from "../src/answers/wear/effects.ts";
import { curveOf, rugOf, stepsOf } from "../src/answers/wear/curve.ts";
import { lifeRow } from "../src/answers/wear/life-row.ts";
import { placeOf } from "../src/answers/wear/all-wear.ts";
import { ALL_WEAR, wearRecords } from "../src/answers/wear/wear-records.ts";
import type { WearLine } from "../src/answers/wear/wear-records.ts";
import type { Engine } from "../src/db/engine.ts";
import { wearCurveChart } from "../src/rooms/wear/wear-curve-chart.ts";
import { lifeAt, shapeOf } from "../src/stats/life-figures.ts";
import type { LifeLine } from "../src/stats/life-lines.ts";
import { hasCurve, weibullLife } from "../src/stats/weibull-life.ts";
import { readCase } from "../tests/reference/read-case.ts";
import type { Demo } from "./binding/demo.ts";
import { BOARD, picture, sources, table, text, told } from "./binding/pieces.ts";
import type { Piece } from "./binding/pieces.ts";
import { rangesChart } from "./binding/ranges-chart.ts";
import type { Ranged } from "./binding/ranges-chart.ts";

/** A part or a row? Line roller bearings of the demo shop, and patients of a published trial, each counted in three ways. */
const POSITION = "line_roller_bearing", TRUE_SHAPE = 1.7, TRUE_RATIO = 2;

/** Every inspection for itself, as a spreadsheet has it: failed or not after the days written on the ticket. */
const ROWS = `-- Every inspection as a row of its own.
-- Columns: days double, failed boolean, rinse varchar, water varchar, tier varchar, sealed boolean, parts bigint
select v.salt_days as days, i.failed, v.rinse, v.water, v.tier, v.sealed, count(*) as parts
from inspected i
join visits v using (visit)
where i.position = '${POSITION}' and i.counted and v.salt_days > 0 and v.water is distinct from 'fresh'
group by all
order by all`;

type InspectionRow = { days: number; failed: boolean; rinse: string | null; water: string | null; tier: string | null; sealed: boolean | null; parts: number };

async function rowLines(engine: Engine): Promise<WearLine[]> {
  const rows = await engine.rows<InspectionRow>(ROWS);
  return rows.map(({ days, failed, ...row }) => ({ ...row, position: POSITION, low: failed ? 0 : days, high: failed ? days : null, maker: null, model: null, left_out: null, linked: 0, mates: 0 }));
}

const failedShare = (lines: readonly WearLine[], rinse: string) => {
  const some = lines.filter((line) => line.rinse === rinse), sum = (of: readonly WearLine[]) => of.reduce((total, { parts }) => total + parts, 0);
  return sum(some.filter(({ high }) => high !== null)) / sum(some);
};

interface Counted extends Ranged { readonly shape: string }

/** The unrinsed wear as one way of counting has it. */
function counted(name: string, lines: readonly WearLine[]): Counted {
  const { fit, columns, status } = conditionFit(lines), never = effectsOf(lines, { fit, columns, status }, POSITION).find(({ level }) => level === "never")?.time_ratio;
  if (!fit || !never || never.value === null) throw new RangeError(`spells-against-rows: needs a curve for “${name}”, got ${status}`);
  return { name, value: never.value, low: never.low, high: never.high, counts: `${fit.failed} of ${fit.n}`, shape: fit.shape.toFixed(2) };
}

/** Months until radiotherapy with chemotherapy changed the breast's shape: known only to lie between two examinations. */
function patients(): { name: string; lines: LifeLine[] }[] {
  const known = readCase("04-life-data/interval-breast-retraction").rows.filter(({ group }) => group === "RCT")
    .map(({ lo, hi, count }): LifeLine => ({ low: Number(lo), high: hi === "" ? Infinity : Number(hi), count: Number(count) }));
  const found = known.map((line) => (line.high === Infinity ? line : { ...line, low: line.high }));
  const looks = known.flatMap(({ low, high, count = 1 }): LifeLine[] => [
    ...(low > 0 ? [{ low, high: Infinity, count }] : []), ...(high < Infinity ? [{ low: 0, high, count }] : []),
  ]);
  return [{ name: "between two looks", lines: known }, { name: "on the day it was found", lines: found }, { name: "every look a row", lines: looks }];
}

function lived({ name, lines }: { name: string; lines: LifeLine[] }): Counted {
  const fit = weibullLife(lines);
  if (!hasCurve(fit)) throw new RangeError(`spells-against-rows: needs a curve for “${name}”, got ${fit.status}`);
  const half = lifeAt(fit, 0.5);
  return { name, ...half, counts: `${fit.failed} of ${fit.n}`, shape: shapeOf(fit).value.toFixed(3) };
}

const rows = (list: readonly Counted[]) => list.map(({ name, counts, shape, value, low, high }) => [name, counts, shape, `${value.toFixed(2)} (${low?.toFixed(2) ?? "open"} to ${high?.toFixed(2) ?? "open"})`]);

/** The curve of the parts followed, as the Salt & wear room draws it. */
async function followedCurve(engine: Engine): Promise<{ planned: readonly WearLine[]; svg: SVGElement | HTMLElement | null }> {
  const { lines: planned, places } = await wearRecords(engine, ALL_WEAR, { position: POSITION, conditions: true }), { row, fit } = lifeRow(planned, { place: placeOf(places, POSITION), clock: ALL_WEAR.clock });
  const curve = fit && hasCurve(fit) ? curveOf(fit, planned) : [];
  return { planned, svg: wearCurveChart({ row, curve, steps: stepsOf(planned), rug: rugOf(planned) }, BOARD) };
}

export async function notebook(demo: Demo): Promise<readonly Piece[]> {
  const engine = await demo.engine(), raw = await rowLines(engine), { planned, svg } = await followedCurve(engine);
  const all = (await wearRecords(engine, { ...ALL_WEAR, first_sights: "all" }, { position: POSITION, conditions: true })).lines;
  const ways = [counted("every inspection a row", raw), counted("parts followed, all", all), counted("parts followed, planned work", planned)], trial = patients().map(lived);
  const published = readCase("04-life-data/interval-breast-retraction").expected.values["RCT"] as unknown as { weibull: { beta: number; eta: number } };
  return [
    text("# A part, or a row?", "",
      `Line roller bearings, in salt and brackish water. The shop was made so that one day unrinsed wears like ${TRUE_RATIO}, with a shape of ${TRUE_SHAPE} (the higher the shape, the more a part wears out rather than breaking at any time). ` +
      `A pivot table says: reels never rinsed failed ${(failedShare(raw, "never") / failedShare(raw, "always")).toFixed(2)} times as often as reels always rinsed. That is not the same thing: a share grows with the days, and it cannot grow beyond one.`),
    table(["counted", "failed, of", "shape:", "times as fast unrinsed:"], [...rows(ways), ["how the shop was made", "", TRUE_SHAPE.toFixed(2), TRUE_RATIO.toFixed(2)]]),
    picture("How much faster an unrinsed reel wears, by what is counted", "Times as fast as a reel always rinsed, with the range, for three ways of counting, beside the truth the shop was made with.",
      rangesChart({ rows: ways, axis: "times as fast as always rinsed", beside: { at: TRUE_RATIO, name: "the truth" } }, BOARD)),
    text(
      "**A row knows only the days since the last service.** The part may be older: it was good at the service before and went on. So rows bend the shape down, and the effect",
      "of rinsing with it. **A part that brings its reel in chose itself.** Counting it where it was first looked at for that reason makes parts look worse than they are,",
      "because those that hold are not seen yet; so a part counts from planned work on.", "",
      "Over a hundred invented shops (seeds 201 to 300) one in ten had failed by 11 to 12 days when only parts there before the reel's first visit were held to this, by 17.7",
      "when every part is, and by 19 in truth; the 95 % limits of the unrinsed wear held 2.00 in 88 and in 94 of them. Ranges that allow for several parts of one reel, or of",
      "reels that came together, were as wide (0.118 against 0.119) and held it in the same 94: they are not used."),
    picture("The same parts, followed", "Share of line roller bearings failed against salt days: the fitted curve with its range, the steps that assume no curve, and every inspection above.", svg),
    text("## The same mistake on published data", "",
      "48 patients were examined from time to time after radiotherapy with chemotherapy. The change looked for came at some time between two examinations, exactly as a bearing",
      "fails at some time between two services. Here is the month by which half had it, in three ways of counting.", "",
      `Counted as what is known, our fit is the one R's survival package gives: shape ${published.weibull.beta.toFixed(3)}.`),
    table(["the change is taken to have come", "found in, of", "shape:", "half by month:"], rows(trial)),
    picture("When half had it, by what is counted", "Month by which half of the patients had the change, with the range, for three ways of counting.", rangesChart({ rows: trial, axis: "months until half had it" }, BOARD)),
    text("Taking the day it was found moves everything later: the bearing was gone for weeks before the reel came in. Taking every look as a row of its own counts each patient twice, and calls two looks at one patient two patients."),
    sources(
      "Failures known to lie between two looks, Weibull regression: Meeker & Escobar (1998), Statistical Methods for Reliability Data, ch. 7, 8 and 11; `src/stats/weibull-life.ts`. Steps without a curve: Turnbull (1976), Journal of the Royal Statistical Society B 38:290–295.",
      "The patients: Finkelstein & Wolfe (1985), Biometrics 41:933–945, list cancer of the R package npsurv; fitted there with survival 3.5.3; `tests/reference/04-life-data/interval-breast-retraction`."),
  ];
}

export const main = (): Promise<number> => told(notebook);
