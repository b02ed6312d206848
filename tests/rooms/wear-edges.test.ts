import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { advise, allWear, wearPage } from "../../src/answers/wear/ask-wear.ts";
import { ALL_WEAR } from "../../src/answers/wear/wear-records.ts";
import type { Clock, WearPage } from "../../src/answers/wear/wear.ts";
import type { Engine, SqlValue } from "../../src/db/engine.ts";
import { adviceHeadline, skippingSentence } from "../../src/rooms/wear/advice-words.ts";
import { ADVICE_COLUMNS, bandColumns, curveColumns, curveRows, effectColumns, MODEL_COLUMNS, positionColumns, rinseColumns } from "../../src/rooms/wear/wear-columns.ts";
import { effectSentence, leftOut, linkedSentence, modelsSentence, sensitivitySentence, wearSentence } from "../../src/rooms/wear/wear-words.ts";
import type { Column } from "../../src/ui/table-rows.ts";
import { fill, openShop } from "../answers/shop.ts";

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

type Seen = { days: number | null; failed: boolean; count?: number; more?: Record<string, SqlValue> };
async function shop(seen: readonly Seen[]): Promise<void> {
  const each = seen.flatMap(({ count = 1, ...one }) => Array.from({ length: count }, () => one)).map((one, i) => ({ ...one, ticket_no: `T${i}` }));
  await fill(engine, {
    tickets: each.map(({ ticket_no, days, more = {} }) => ({
      ticket_no, received_on: "2024-05-01", finished_on: "2024-05-03", maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "line roller", serial: ticket_no,
      water: "salt", rinse: "always", came_in: "planned", salt_days: days, use_days: days, ...more })),
    findings: each.map(({ ticket_no, failed }) => ({ ticket_no, position: "line_roller_bearing", action: failed ? "replaced" : "cleaned", grade: failed ? 3 : 1, routine: failed ? false : null })),
    models: [{ maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", sealed: false, tier: "mid" }],
  });
}

const cells = <R>(columns: readonly Column<R>[], rows: readonly R[]): string[] => rows.flatMap((row) => columns.map(({ text, value }) => (text ? text(row) : String(value(row) ?? "–"))));

function pageWords({ overall, groups, curve, steps, effects, models, grades, sensitivity, misfit }: WearPage): string[] {
  const { clock } = overall;
  return [
    wearSentence(overall), ...leftOut(overall), ...groups.map((row) => wearSentence(row)), ...effects.map((effect) => effectSentence(effect, clock)), modelsSentence(models), grades.note, misfit?.text ?? "",
    ...sensitivity.map((one) => sensitivitySentence(one, overall)), ...cells(rinseColumns(clock), groups), ...cells(curveColumns(clock), curveRows(curve, steps)), ...cells(effectColumns(clock), effects),
    ...cells(MODEL_COLUMNS, models), ...cells(bandColumns(clock), grades.bands),
  ];
}

/** Everything the room writes about these records, and the sentence of the one part. */
async function words(clock: Clock = "salt_days"): Promise<{ all: string; part: string; headline: string }> {
  const filter = { ...ALL_WEAR, clock }, wear = await allWear(engine, filter), page = await wearPage(engine, filter, "line_roller_bearing");
  const advice = await advise(engine, { reel_kind: "spinning", maker: null, model: null, water: "salt", rinse: "always", risk: 0.1 });
  const all = [
    ...cells(positionColumns(clock), wear.rows), linkedSentence(wear), ...wear.remarks, ...pageWords(page), adviceHeadline(advice), advice.text, ...cells(ADVICE_COLUMNS, advice.positions), ...advice.slip.lines,
    advice.skipping ? skippingSentence(advice.skipping, "cu") : "",
  ].join("\n");
  return { all: all.replaceAll("\u00a0", " "), part: wearSentence(page.overall).replaceAll("\u00a0", " "), headline: adviceHeadline(advice) };
}

const NOTHING = "Too few records of such reels to advise on.";
describe("records from which little can be had, as the room words them", () => {
  test.each<[string, Seen[], RegExp]>([
    ["none failed", [{ days: 10, failed: false, count: 6 }, { days: 45, failed: false, count: 5 }], /^None has failed\. Even so, 1 in 10 has likely not failed before \d+(\.\d)? salt days\. 11 .*, 0 failed\.$/],
    ["all failed", [{ days: 30, failed: true, count: 7 }, { days: 60, failed: true, count: 4 }], /^Every one had failed when it was first looked at\. 1 in 10 has likely failed by \d+(\.\d)? salt days\. 11 .*, 11 failed\.$/],
    ["one failed", [{ days: 8, failed: false, count: 9 }, { days: 30, failed: true }], /^Under 5 failures: no curve\. Even so, 1 in 10 .* 10 .*, 1 failed\.$/],
    ["one exposure", [{ days: 25, failed: false, count: 9 }, { days: 25, failed: true, count: 7 }], /^All were looked at after the same time, so nothing shows how failures grow\. .*16 .*, 7 failed\.$/],
    ["missing exposure", [{ days: null, failed: false, count: 9 }, { days: null, failed: true, count: 7 }], /^On this clock no part was in use, or it is not written\.$/],
    ["zero exposure", [{ days: 0, failed: false, count: 9 }, { days: 0, failed: true, count: 7 }], /^On this clock no part was in use, or it is not written\.$/],
    ["younger ones fail", [{ days: 5, failed: true, count: 12 }, { days: 5, failed: false, count: 9 }, { days: 60, failed: true, count: 5 }, { days: 60, failed: false, count: 30 }], /^The parts that were fished longer did not fail more often\. This does not look like wear\. 56 /],
  ])("%s: a reason in a sentence, the counts, no advice and no figure that is none", async (_name, seen, sentence) => {
    await shop(seen);
    const { all, part, headline } = await words();
    expect(part).toMatch(sentence);
    expect(headline).toBe(NOTHING);
    expect(all).not.toMatch(/NaN|undefined|null|Infinity|-\d/);
  });

  test("zero and missing exposure are told apart below the figure", async () => {
    await shop([{ days: 0, failed: true, count: 3 }, { days: null, failed: true, count: 2 }, { days: 20, failed: false, count: 4 }]);
    const { all } = await words();
    expect(all).toContain("3 found failed with no salt days since last good: age or a bad part, kept out of the curve.");
    expect(all).toContain("2 left out because no salt days are written on the ticket.");
  });

  test("months that contradict the visit before are counted in a sentence, and give no figure that is none", async () => {
    const back = (serial: string, months: number) => ({ days: 20, failed: false, more: { serial, received_on: "2026-05-01", finished_on: "2026-05-02", months_since_service: months } });
    await shop([{ days: 12, failed: false, more: { serial: "A" } }, back("A", 3), { days: 15, failed: false, more: { serial: "B" } }, back("B", 24)]);
    for (const clock of ["months", "salt_days"] as const) {
      const { all } = await words(clock);
      expect(all).toMatch(/On 1 visit the months written contradict the visit before/);
      expect(all).not.toMatch(/NaN|undefined|null|Infinity|-\d/);
    }
  });
});
