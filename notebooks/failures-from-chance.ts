import { loadavg } from "node:os";
import { ALL_VERDICTS, failureVerdicts } from "../src/answers/failures/failure-verdicts.ts";
import { sideOf } from "../src/answers/failures/verdict.ts";
import type { Verdict } from "../src/answers/failures/verdict.ts";
import { lots } from "../src/answers/lots/lots.ts";
import type { LotRow } from "../src/answers/lots/lot.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { fillSeed } from "../tests/answers/seed-shop.ts";

/**
 * Failures told apart from chance: what is found of what was planted, and what is found where nothing was planted.
 *
 * Each shop is invented anew from its seed and judged by the app's own answers. Run it with
 * `npm run notebook -- notebooks/failures-from-chance.ts`; it takes some minutes for twenty shops with and twenty without.
 */
interface Found { seed: number; verdicts: readonly Verdict[]; lot: LotRow | undefined; milliseconds: number }

/** Judges one invented shop after the other in one engine. */
async function judged(seeds: readonly number[], without: "all" | readonly string[]): Promise<Found[]> {
  const engine = await openNodeEngine(), found: Found[] = [];
  try {
    for (const seed of seeds) {
      await fillSeed(engine, seed, without);
      const began = performance.now(), verdicts = await failureVerdicts(engine, ALL_VERDICTS), milliseconds = performance.now() - began;
      found.push({ seed, verdicts, lot: (await lots(engine)).rows[0], milliseconds });
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

function plantedRow(shop: Found): string {
  const clutch = of(shop, "ar_clutch", "Whinbeck 40"), seal = of(shop, "body_seal", "Ekholt", true), { lot } = shop;
  const others = shop.verdicts.filter((one) => one.word === "stands out" && one !== clutch && one.position !== "body_seal").length;
  const window = lot ? `${lot.verdict}, ${lot.from.slice(0, 7)} to ${lot.to.slice(0, 7)}` : "–";
  return `| ${[shop.seed, SHORT[clutch.word], range(clutch), SHORT[seal.word], seal.fault?.mode ?? "–", window, SHORT[of(shop, "ar_clutch", "Slipdene 45").word],
    SHORT[of(shop, "ar_clutch", "Jarnvik 30-II").word], others].join(" | ")} |`;
}

/** Whether both ends of the batch's months lie within one of what was planted. */
function dated({ lot }: Found): boolean {
  const month = (day: string) => Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7)), near = (day: string, truth: string) => Math.abs(month(day) - month(truth)) <= 1;
  return lot !== undefined && lot.began !== null && near(lot.from, "2024-05") && near(lot.to, "2024-09");
}

/** In how many shops each planted truth was found; for the README. */
function tally(shops: readonly Found[], none: readonly Found[]): string[] {
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
  return ["| planted | seen | shops |", "| --- | --- | ---: |", ...rows.map((row) => `| ${row.join(" | ")} |`)];
}

/** The words for shops in which everything was planted, and in which nothing was. */
export async function notebook(planted: readonly number[] = [1], bare: readonly number[] = [2]): Promise<string> {
  const shops = await judged(planted, []), none = await judged(bare, "all");
  const false_alarms = none.map((shop) => ({ seed: shop.seed, out: shop.verdicts.filter(({ word }) => word === "stands out"), lot: shop.lot }));
  const times = [...shops, ...none].map(({ milliseconds }) => milliseconds).sort((a, b) => a - b);
  return [
    "# Failures from chance", "",
    "## Both runs in one table", "", ...tally(shops, none), "",
    `## Planted truths, ${planted.length} invented shops`, "",
    "| seed | PT1 Whinbeck clutch | like with like, planned | PT2 Ekholt seals (series) | fault | PT4 batch (2024-05 to 2024-09) | PT6 Slipdene clutch | PT9 Jarnvik clutch | others that stand out |",
    "| ---: | --- | --- | --- | --- | --- | --- | --- | ---: |", ...shops.map(plantedRow), "",
    `## The other way round, ${bare.length} shops with nothing planted`, "",
    "| seed | parts that stand out | worst lot |", "| ---: | --- | --- |",
    ...false_alarms.map(({ seed, out, lot }) => `| ${seed} | ${out.length === 0 ? "none" : out.map((one) => `${one.position} ${one.model}`).join(", ")} | ${lot?.verdict ?? "–"} |`), "",
    `${false_alarms.filter(({ out }) => out.length > 0).length} of ${bare.length} shops show a model that stands out though nothing was planted; ${
      false_alarms.filter(({ lot }) => lot?.verdict === "bad batch").length} show a bad batch.`, "",
    `Judging a shop took ${(times[Math.floor(times.length / 2)] ?? 0).toFixed(0)} ms (middle of ${times.length}), at load ${(loadavg()[0] ?? 0).toFixed(1)}.`, "",
  ].join("\n");
}

/** Seeds on which nothing was chosen: those of the judging and of the batch's months were 1 to 60 and 101 to 108. */
const FRESH = Array.from({ length: 20 }, (_, i) => 201 + i);

export async function main(): Promise<number> {
  process.stdout.write(`${await notebook(FRESH, FRESH)}\n`);
  return 0;
}
