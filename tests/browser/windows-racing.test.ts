import { join } from "node:path";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import type { Page } from "playwright-core";
import { closeAll, openApp } from "./harness.ts";
import { builtPage } from "./pages/built.ts";
import type { Deed, Racing } from "./race-page/page.ts";

/** Races of each kind; the long run makes 50. */
const RACES = Number(process.env["SALTBENCH_RACES"] ?? 10);
const LONG = 900_000;

let built: Awaited<ReturnType<typeof builtPage>>, here: Page, there: Page;
const tally: Record<string, number> = {};
beforeAll(async () => {
  built = await builtPage(join(import.meta.dirname, "race-page"));
  const app = await openApp({ folder: built.folder });
  here = app.page;
  there = await app.context.newPage();
  await there.goto(app.url);
  expect([await here.evaluate(() => racing.ready), await there.evaluate(() => racing.ready)]).toEqual([null, null]);
});
afterAll(async () => {
  process.stdout.write(`races: ${JSON.stringify(tally)}\n`);
  await closeAll();
  built.remove();
});

type Told = Awaited<ReturnType<Racing["race"]>>;
type State = Awaited<ReturnType<Racing["state"]>>;
const state = (page: Page) => page.evaluate(() => racing.state());
const alone = async (...deed: Deed) => (await here.evaluate((one) => racing.race(0, [one]), deed))[0] ?? { id: null, told: "nothing was done" };

/** Milliseconds that one of the two begins later, another in each race, so that the steps fall between each other otherwise. */
const late = (number: number, most: number) => (number * 37) % most;

/** Both windows begin at one moment. */
async function race(one: readonly Deed[], other: readonly Deed[]) {
  const at = Date.now() + 40;
  const [ours, theirs] = await Promise.all([one, other].map((deeds, window) => (window === 0 ? here : there).evaluate(([start, all]) => racing.race(start, all), [at, deeds] as const))) as [Told, Told];
  return [...ours, ...theirs];
}
const count = (what: string) => { tally[what] = (tally[what] ?? 0) + 1; };

/** Waits until both windows show what is on the disk, and gives it; nothing is damaged, no trouble told, no number in twice. */
async function shown(): Promise<State> {
  const inStep = (one: State) => JSON.stringify([one.ids, one.rows]) === JSON.stringify([one.shown.ids, one.shown.counts.tickets + one.shown.counts.findings]);
  let found: [State, State] | null = null;
  await expect.poll(async () => {
    found = [await state(here), await state(there)];
    return [found.every(inStep), JSON.stringify(found[0].shown) === JSON.stringify(found[1].shown)];
  }, { timeout: 30_000 }).toEqual([true, true]);
  const [one] = found as unknown as [State, State], { trouble, damaged, counts } = one.shown;
  expect([trouble, damaged, counts.conflicts, counts.tickets]).toEqual([null, 0, 0, counts.numbers]);
  return one;
}
const untold = (results: Told) => results.flatMap(({ told }) => told ?? []);

beforeEach(async () => { await alone("removeAll", ""); await shown(); });

test(`${RACES} times both windows answer words, date changes of habit and part numbers at once: every answer is kept once, and both show it`, async () => {
  for (let number = 0; number < RACES; number += 1) {
    const by = (who: string): Deed[] => [["spell", `w${number} ${who}`], ["spell", "brg"], ["date", `${number} ${who}`], ["group", `P-${number}-${who}`], who === "a" ? ["price", String(number + 1)] : ["cost", String(number + 1)]];
    expect(untold(await race(by("a"), by("b")))).toEqual([]);
    count("answers at once");
  }
  const { words, shown: seen } = await shown();
  expect([words.length, seen.changes.length, seen.groups, seen.rates]).toEqual([2 * RACES + 1, 2 * RACES, 2 * RACES, { hour_price: RACES, hour_cost: RACES, beside_min: null }]);
}, LONG);

test(`${RACES} times both windows undo one import, or one undoes what the other reads again: one does it, its rows are out or in once, and who came late is told`, async () => {
  await alone("bringIn", "stays");
  for (let number = 0; number < RACES; number += 1) {
    const id = (await alone("bringIn", `U-${number}`)).id ?? "";
    for (const page of [here, there]) await page.evaluate((one) => racing.know(one), id);
    await shown();
    const again = number % 3 === 0, told = untold(await race([["takeOut", id, late(number, again ? 311 : 23)]], [again ? ["readAgain", `${id} U-${number}`] : ["takeOut", id]]));
    const { ids } = await shown();
    expect([told.length <= Number(again), told.every((one) => one.startsWith("This import was taken out, or read again, in another window meanwhile.")), ids.includes(id)]).toEqual([true, true, false]);
    expect(ids.length).toBe(again && told.length === 0 ? 2 : 1);
    count(again ? `undo against reading again: ${told.length === 0 ? "read again first" : "undone first, the other told"}` : "undone in both");
    if (ids.length === 2) await alone("takeOut", ids[1] ?? "");
    await shown();
  }
}, LONG);

test(`${RACES} times both windows finish one ticket, at times while one still writes: it is in the records once, with all that was written, and who came late is told`, async () => {
  for (let number = 0; number < RACES; number += 1) {
    const id = (await alone("begin", `F-${number}`)).id ?? "", writing: Deed[] = number % 2 ? [["writeOn", `${id} note${number}`, late(number, 311)]] : [];
    const results = await race([["finish", id]], [...writing, ["finish", id, late(number, 23)]]);
    const told = untold(results), after = await shown(), ticket = after.bench.find((one) => one.id === id);
    expect(told.every((one) => /^(Another window|This ticket was finished)/.test(one)), told.join()).toBe(true);
    if (!ticket?.finished) {
      count("ticket written on while both finished: left at the bench, both told");
      expect(ticket?.batch_id).toBe(after.ids.at(-1));
      expect((await alone("finish", id)).told).toBeNull();
    } else count(told.some((one) => one.startsWith("Another window wrote")) ? "ticket written on while one finished it: told, and the other put all of it in" : "ticket finished in both: once");
    const at_last = await shown(), finished = at_last.bench.find((one) => one.id === id);
    expect([finished?.finished, at_last.ids.length, at_last.ids.includes(finished?.batch_id ?? "")]).toEqual([true, number + 1, true]);
    if (finished?.note) expect(await there.evaluate(() => racing.notes())).toContain(finished.note);
  }
}, LONG);

test(`${RACES} times one window brings files in while the other changes settings: both are there, in both windows`, async () => {
  for (let number = 0; number < RACES; number += 1) {
    const results = await race([["bringIn", `I-${number}`], ["price", String(number + 1), late(number, 211)]], [["date", `i${number}`], ["spell", `i${number}`], ["cost", String(number + 1)], ["group", `I-${number}`]]);
    expect(untold(results)).toEqual([]);
    count("import against settings");
  }
  const { ids, words, shown: seen } = await shown();
  expect([ids.length, words.length, seen.changes.length, seen.groups, seen.rates]).toEqual([RACES, RACES, RACES, RACES, { hour_price: RACES, hour_cost: RACES, beside_min: null }]);
}, LONG);

test(`${RACES} times one window restores a backup while the other brings files in: the files stand beside the backup, or gave way to it as all before it`, async () => {
  await alone("bringIn", "B-1");
  await alone("spell", "of the backup");
  await alone("backUp", "");
  for (let number = 0; number < RACES; number += 1) {
    const [restored, brought] = await race([["restore", "", number % 2 ? 0 : late(number, 311)]], [["bringIn", `R-${number}`, number % 2 ? late(number, 311) : 0]]);
    expect([restored?.told, brought?.told]).toEqual([null, null]);
    const { ids, words, shown: seen } = await shown(), beside = ids.includes(brought?.id ?? "");
    expect([ids, words]).toEqual([beside ? [restored?.id, brought?.id] : [restored?.id], ["of the backup"]]);
    expect(seen.counts.tickets).toBe(beside ? 2 : 1);
    count(beside ? "restore first, the import beside it" : "import first, the restore in its place");
  }
}, LONG);
