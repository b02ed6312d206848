import { ALL_VERDICTS, failureVerdicts } from "../src/answers/failures/failure-verdicts.ts";
import { sideOf } from "../src/answers/failures/verdict.ts";
import type { Verdict } from "../src/answers/failures/verdict.ts";
import { modelName } from "../src/answers/model-name.ts";
import { lots } from "../src/answers/lots/lots.ts";
import type { LotRow } from "../src/answers/lots/lot.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { funnelChart } from "../src/rooms/failures/funnel-chart.ts";
import type { FunnelPicture } from "../src/rooms/failures/funnel-chart.ts";
import { modelsFunnel } from "../src/rooms/failures/funnel-pictures.ts";
import { funnel } from "../src/answers/failure-pages/funnel.ts";
import { excessSpread, pooledShares } from "../src/stats/beta-binomial.ts";
import { falseDiscovery } from "../src/stats/false-discovery.ts";
import { funnelLimits } from "../src/stats/funnel-limits.ts";
import { percent } from "../src/ui/format.ts";
import { readCase } from "../tests/reference/read-case.ts";
import { fillSeed } from "../tests/answers/seed-shop.ts";
import { demoShop } from "./binding/demo.ts";
import type { Demo } from "./binding/demo.ts";
import { asText, BOARD, picture, sources, table, text } from "./binding/pieces.ts";
import type { Piece } from "./binding/pieces.ts";

/**
 * Failures told apart from chance: what is found of what was planted, and what is found where nothing was planted.
 *
 * Each shop is invented anew from its seed and judged by the app's own answers. `npm run notebook` does twenty shops with and
 * twenty without, which takes some minutes; the page and the test do two of each.
 */
interface Found { seed: number; verdicts: readonly Verdict[]; lot: LotRow | undefined }

/** Judges one invented shop after the other in one engine. */
async function judged(seeds: readonly number[], without: "all" | readonly string[]): Promise<Found[]> {
  const engine = await openNodeEngine(), found: Found[] = [];
  try {
    for (const seed of seeds) {
      await fillSeed(engine, seed, without);
      found.push({ seed, verdicts: await failureVerdicts(engine, ALL_VERDICTS), lot: (await lots(engine)).rows[0] });
    }
    return found;
  } finally {
    await engine.close();
  }
}

const of = ({ verdicts }: Found, position: string, model: string, series = false): Verdict => {
  const verdict = verdicts.find((one) => one.position === position && one.model === model && one.series === series);
  if (!verdict) throw new RangeError(`failures-from-chance: needs a verdict for ${position} on ${model}`);
  return verdict;
};
const SHORT: Readonly<Record<Verdict["word"], string>> = {
  "stands out": "stands out", "worse than most, not yet sure": "worse, not yet sure", "cannot tell apart from how these reels come in": "cannot tell",
  "no different": "no different", "too few": "too few",
};

function range(verdict: Verdict): string {
  const { adjusted } = sideOf(verdict, "planned");
  return adjusted.value === null || adjusted.low === null || adjusted.high === null ? "–" : `${adjusted.value.toFixed(1)} (${adjusted.low.toFixed(1)} to ${adjusted.high.toFixed(1)})`;
}

function plantedRow(shop: Found): string[] {
  const clutch = of(shop, "ar_clutch", "Whinbeck 40"), seal = of(shop, "body_seal", "Ekholt", true), { lot } = shop;
  const others = shop.verdicts.filter((one) => one.word === "stands out" && one !== clutch && one.position !== "body_seal").length;
  const window = lot ? `${lot.verdict}, ${lot.from.slice(0, 7)} to ${lot.to.slice(0, 7)}` : "–";
  return [String(shop.seed), SHORT[clutch.word], range(clutch), SHORT[seal.word], seal.fault?.mode ?? "–", window, SHORT[of(shop, "ar_clutch", "Slipdene 45").word],
    SHORT[of(shop, "ar_clutch", "Jarnvik 30-II").word], String(others)];
}

/** Whether both ends of the batch's months lie within one of what was planted. */
function dated({ lot }: Found): boolean {
  const month = (day: string) => Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7)), near = (day: string, truth: string) => Math.abs(month(day) - month(truth)) <= 1;
  return lot !== undefined && lot.began !== null && near(lot.from, "2024-05") && near(lot.to, "2024-09");
}

/** In how many shops each planted truth was found; for the README. */
function tally(shops: readonly Found[], none: readonly Found[]): [string, string, string][] {
  const found = (holds: (shop: Found) => boolean) => `${shops.filter(holds).length} of ${shops.length}`;
  const clutch = (shop: Found) => of(shop, "ar_clutch", "Whinbeck 40"), seal = (shop: Found) => of(shop, "body_seal", "Ekholt", true);
  const covers = (shop: Found) => { const { low, high } = sideOf(clutch(shop), "planned").adjusted; return low !== null && high !== null && low <= 2.6 && high >= 4; };
  const batch = ({ lot }: Found) => lot?.verdict === "bad batch" && lot.size_or_part === "4x7x2.5" && lot.supplier === "Far Lantern Imports";
  const held = ({ lot }: Found) => lot !== undefined && lot.began !== null && lot.ended !== null && lot.began.earliest <= "2024-05-01" && lot.began.latest >= "2024-05-01" && lot.ended.earliest <= "2024-09-01" && lot.ended.latest >= "2024-09-01";
  const alarms = (shop: Found) => shop.verdicts.filter((one) => one.word === "stands out" && one !== clutch(shop) && !(one.position === "body_seal" && one.model.startsWith("Ekholt"))).length;
  const rows: [string, string, string][] = [
    ["PT1", "the Whinbeck 40's clutch stands out", found((shop) => clutch(shop).word === "stands out")], ["PT1", "its like-with-like range holds 2.6 to 4.0", found(covers)],
    ["PT2", "the Ekholt seals are at least worse than most, as a series", found((shop) => ["stands out", "worse than most, not yet sure"].includes(seal(shop).word))],
    ["PT2", "pinching is named as their fault", found((shop) => seal(shop).fault?.mode === "pinched")],
    ["PT4", "the batch is called bad", found(batch)], ["PT4", "it is called bad, or perhaps", found(({ lot }) => lot?.size_or_part === "4x7x2.5" && lot.supplier === "Far Lantern Imports" && lot.began !== null)], ["PT4", "its months within one at both ends", found(dated)], ["PT4", "the ranges of both ends hold the true months", found(held)],
    ["PT4", "the Slipdene is not blamed for it", found((shop) => of(shop, "line_roller_bearing", "Slipdene 45").word !== "stands out")],
    ["PT6", "the Slipdene's clutch cannot be told apart", found((shop) => of(shop, "ar_clutch", "Slipdene 45").word === "cannot tell apart from how these reels come in")],
    ["PT9", "too few Jarnviks to say anything", found((shop) => of(shop, "ar_clutch", "Jarnvik 30-II").word === "too few")],
    ["PT10", "no drag knob seal stands out for the new habit", found(({ verdicts }) => verdicts.every((one) => one.position !== "drag_knob_seal" || one.word !== "stands out"))],
    ["–", "nothing else stands out", found((shop) => alarms(shop) === 0)],
    ["none planted", "a model stands out all the same", `${none.filter(({ verdicts }) => verdicts.some(({ word }) => word === "stands out")).length} of ${none.length}`],
    ["none planted", "a bad batch is seen all the same", `${none.filter(({ lot }) => lot?.verdict === "bad batch").length} of ${none.length}`],
  ];
  return rows;
}

/** Cities with an illness among people looked at: places differ as models do, or do not. */
interface Cities { readonly seen: readonly { name: string; failed: number; inspected: number }[]; readonly picture: FunnelPicture; readonly status: string; readonly excess: number }

function cities(name: string, up_label: string, across_label: string): Cities {
  const seen = readCase(`02-empirical-bayes/${name}`).rows.map(({ group = "", y, n }) => ({ name: group.replace("city", "city "), failed: Number(y), inspected: Number(n) }));
  const sum = (key: "failed" | "inspected") => seen.reduce((total, one) => total + one[key], 0), common = sum("failed") / sum("inspected"), most = Math.max(...seen.map(({ inspected }) => inspected));
  const edges = Array.from({ length: 40 }, (_, i) => Math.max(1, Math.round(most ** ((i + 1) / 40)))).filter((across, i, all) => across !== all[i - 1]).map((across) => {
    const [low95, high95] = funnelLimits(across, common, 0.95), [low998, high998] = funnelLimits(across, common, 0.998);
    return { across, low95, high95, low998, high998 };
  });
  const dots = seen.map(({ name: city, failed, inspected }) => ({ name: city, across: inspected, up: failed / inspected, chosen: false, worrying: false }));
  return { seen, status: pooledShares(seen).status, excess: excessSpread(seen), picture: { dots, edges, common, common_name: `all cities ${percent(common, BOARD.locale)}`, across_label, up_label, shares: true } };
}

/** Two published sets judged by the app's own measure of whether places differ at all. */
function published(): Piece[] {
  const toxoplasmosis = cities("betabinomial-toxoplasmosis", "share infected", "people looked at"), cancer = cities("betabinomial-boundary-cancer", "share died of it", "men at risk");
  const p = readCase("01-intervals/multiplicity").rows.filter(({ set }) => set === "BH1995").map((row) => Number(row["p"])), q = falseDiscovery(p);
  const under = (list: readonly (number | null)[], limit: number) => list.filter((one) => one !== null && one < limit).length;
  return [
    text("## Are there differences at all?", "",
      `Before one model is called worse, the models must differ by more than chance makes them. In ${toxoplasmosis.seen.length} cities of El Salvador people were looked at for toxoplasmosis: shares from none to all, many of them of two or three people. ` +
      `The app's measure finds more spread than chance makes (${toxoplasmosis.excess.toFixed(2)} of what is possible), so the cities differ. For ${cancer.seen.length} cities of Missouri, deaths of one cancer, it says “${cancer.status}”.`),
    picture("Cities that differ", "Share infected against people looked at, a dot a city, with the limits that chance alone would keep.", funnelChart(toxoplasmosis.picture, BOARD)),
    text("Inside the dashed lines nineteen of twenty cities would lie if all were alike. Those outside are named. Small cities at the left reach far up and down, and mean nothing."),
    text("## Looking often enough finds something", "",
      `Whoever compares 150 parts on 100 models sees “one in twenty by chance” hundreds of times. In the worked example of the method used, ${p.length} comparisons of one trial, ` +
      `${under(p, 0.05)} lie under one in twenty; after allowing for so many looks ${under(q, 0.05)} are left, as the authors print.`),
  ];
}

/** What was found in shops in which everything was planted, and in which nothing was. */
async function seeded(planted: readonly number[], bare: readonly number[]): Promise<Piece[]> {
  const shops = await judged(planted, []), none = await judged(bare, "all");
  const false_alarms = none.map(({ seed, verdicts, lot }) => ({ seed, out: verdicts.filter(({ word }) => word === "stands out"), lot }));
  return [
    text("## What was planted, and what was found", "", `${planted.length} invented shops with faults planted in them and ${bare.length} with none. So few say little by themselves: the README has twenty and twenty, on seeds that nobody looked at while the rules were chosen, and there one of twenty shops with nothing planted showed a model that stands out, and none a bad batch.`),
    table(["planted", "seen", "shops:"], tally(shops, none)),
    table(["seed:", "PT1 Whinbeck clutch", "like with like, planned", "PT2 Ekholt seals (series)", "fault", "PT4 batch (2024-05 to 2024-09)", "PT6 Slipdene clutch", "PT9 Jarnvik clutch", "others that stand out:"], shops.map(plantedRow)),
    table(["nothing planted, seed:", "parts that stand out", "worst lot"], false_alarms.map(({ seed, out, lot }) => [String(seed), out.length === 0 ? "none" : out.map((one) => `${one.position} ${one.model}`).join(", "), lot?.verdict ?? "–"])),
    text(`${false_alarms.filter(({ out }) => out.length > 0).length} of ${bare.length} shops with nothing planted show a model that stands out; ${false_alarms.filter(({ lot }) => lot?.verdict === "bad batch").length} show a bad batch.`),
  ];
}

export async function notebook(demo: Demo, planted: readonly number[] = [1, 2], bare: readonly number[] = [1, 2]): Promise<readonly Piece[]> {
  const clutches = (await failureVerdicts(await demo.engine(), ALL_VERDICTS)).filter(({ position }) => position === "ar_clutch"), worst = clutches.find(({ model }) => model === "Whinbeck 40");
  if (!worst) throw new RangeError("failures-from-chance: needs the Whinbeck 40 in the demo");
  const { failed, inspected } = sideOf(worst, "planned");
  return [
    text("# Failures from chance", "", "Which part fails on which model more than it should? The one-way clutches of the demo shop, looked at on planned services, where no reel was chosen by its clutch."),
    picture("One-way clutches of all models", "Share of clutches failed against times inspected, a dot a model, with the limits that chance alone would keep around the common share.", funnelChart(modelsFunnel(funnel(clutches, "planned"), modelName(worst), BOARD.locale), BOARD)),
    text(`The ${worst.model} failed in ${failed} of ${inspected}. The app says **${worst.word}**:`, "", ...worst.reasons.map((reason) => `- ${reason}`)),
    ...published(), ...await seeded(planted, bare),
    sources(
      "Drawing thin records toward the others: Gelman and others, Bayesian Data Analysis, ch. 5; Morris (1983), JASA 78:47–55; spread beyond chance: Tarone (1979), Biometrika 66:585–590; `src/stats/beta-binomial.ts`. Limits of the funnel: Spiegelhalter (2005), Statistics in Medicine 24:1185–1202.",
      "Many comparisons: Benjamini & Hochberg (1995), JRSS B 57:289–300, whose example this is (from memory); `src/stats/false-discovery.ts`.",
      "Cities: Efron (1978), Annals of Statistics 6:362–376, and Tsutakawa, Shoop & Marienfeld (1985), Statistics in Medicine 4:201–212; `tests/reference/02-empirical-bayes`.",
      "What is planted: `data/demo-shop/truths.ts`."),
  ];
}

/** Seeds on which nothing was chosen: those of the judging and of the batch's months were 1 to 60 and 101 to 108. */
const FRESH = Array.from({ length: 20 }, (_, i) => 201 + i);

export async function main(): Promise<number> {
  const demo = demoShop();
  try {
    process.stdout.write(`${asText(await notebook(demo, FRESH, FRESH))}\n`);
    return 0;
  } finally {
    await demo.close();
  }
}
