import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { closeAll, download } from "./harness.ts";
import type { App } from "./harness.ts";
import { bringIn, empty, facts, foot, look, openRecords, questions, shape, tried } from "./import-page.ts";

let app: App;
let page: Page;
beforeAll(async () => {
  app = await openRecords();
  page = app.page;
});
beforeEach(() => empty(page));
afterEach(() => app.expectClean());
afterAll(closeAll);

/** Rows of a table of the backup, by heading. */
async function kept(table: string): Promise<string[][]> {
  const { body } = await download(page, () => page.getByRole("button", { name: "Back up all to one file" }).click());
  const { unzipSync } = await import("fflate");
  const text = new TextDecoder().decode(unzipSync(new Uint8Array(body))[`${table}.csv`]);
  return text.trim().split("\r\n").map((line) => line.split(","));
}
const ticketNumbers = async () => (await kept("tickets")).slice(1).map(([number]) => number).sort();

// What each shape gives is worked out by hand in tests/records/understanding/shapes.test.ts; here it comes through the screen.
describe("a file that is none of our tables is shown before it comes in", () => {
  test("a workshop's sheet: one question with its best answer, and another answer changes what will come in", async () => {
    await look(page, shape("workshop-sheet.csv"));
    expect(await questions(page)).toEqual([["Is 03/04/25 the 3 April or the 4 March?", "the day comes first"]]);
    expect(await foot(page)).toBe("3 tickets and 6 findings will come in; 2 rows left aside.");
    await page.getByLabel("the month comes first").check();
    await tried(page);
    await page.locator("summary", { hasText: "The first 5 rows" }).click();
    await page.getByText(/in 4 March 2025/).waitFor();
    await page.getByLabel("the day comes first").check();
    await tried(page);
    expect(await facts(page)).toEqual(["0", "0", "0"]);
    await bringIn(page, "3 new rows came in.");
    expect(await facts(page)).toEqual(["9", "1", "0"]);
    expect(await ticketNumbers()).toEqual(["R-1041", "R-1042", "R-1043"]);
  });

  test("a notebook: without an answer its rows are to fix, with two answers they come in", async () => {
    await look(page, shape("bench-notebook.txt"));
    expect((await questions(page)).map(([, answer]) => answer)).toEqual([null, null]);
    expect(await foot(page)).toMatch(/^nothing will come in; 4 rows to fix; 1 row left aside; 2 questions have no answer/);
    await page.getByLabel("the month comes first").check();
    await page.getByRole("status").filter({ hasText: "1 question has no answer" }).waitFor();
    await tried(page);
    const year = page.getByLabel("Which year is the first of these dates in?");
    await year.fill("2025");
    await year.press("Enter");
    await page.getByText(/^6 tickets/).first().waitFor();
    await tried(page);
    expect(await foot(page)).toMatch(/^6 tickets and \d+ findings will come in; 1 row left aside\.$/);
    await bringIn(page);
    expect((await kept("tickets")).length - 1).toBe(6);
    expect(JSON.stringify(await kept("tickets"))).not.toContain("lady");
  });

  test("a till's export: no question; a bill for two jobs is to fix and a credit note stays aside", async () => {
    await look(page, shape("till-export.csv"));
    expect(await questions(page)).toEqual([]);
    expect(await foot(page)).toBe("1 ticket and 2 findings will come in; 1 row to fix; 1 row left aside.");
    await bringIn(page, "3 new rows came in.");
    expect([await facts(page), await ticketNumbers()]).toEqual([["3", "1", "1"], ["R1051"]]);
  });

  test("an old program's dump: the date that speaks against the rest is named", async () => {
    await look(page, shape("old-database.txt"));
    expect((await questions(page)).map(([, answer]) => answer)).toEqual(["the month comes first"]);
    await page.getByText("Against it: 13/03/2024 in line 5.").waitFor();
    expect(await foot(page)).toMatch(/^4 tickets and \d+ findings will come in; 1 row left aside\.$/);
    await bringIn(page);
    expect(await ticketNumbers()).toEqual(["004417", "004418", "004419", "004420"]);
  });

  test("a web form: two reels in a row make two tickets, a reel nobody knows is to fix", async () => {
    await look(page, shape("web-form.csv"));
    const asked = await questions(page);
    expect(asked).toHaveLength(2);
    expect(asked[1]).toEqual(["Which water does “lake + estuary” count as?", "leave the water empty; the words stay in the note"]);
    expect(await foot(page)).toMatch(/^5 tickets and \d+ findings will come in; 1 row to fix\.$/);
    await bringIn(page);
    expect((await kept("tickets")).length - 1).toBe(5);
    expect(await page.getByRole("row", { name: /dont know, black one/ }).count()).toBe(1);
  });

  test("a stock sheet: parts come in, amounts in another currency and bags are to fix", async () => {
    await look(page, shape("stock-sheet.csv"));
    expect(await questions(page)).toEqual([["Which currency do you reckon in?", "cu"]]);
    expect(await foot(page)).toBe("2 parts will come in; 2 rows to fix; 1 row left aside.");
    await bringIn(page, "2 new rows came in.");
    expect(await facts(page)).toEqual(["2", "1", "2"]);
  });

  test("the demo's own workshop sheet asks what reels fished in several waters count as and which seals are changed as routine; its undo restores the counts", async () => {
    const sheet = { name: "workshop-sheet.csv", mimeType: "text/csv", buffer: readFileSync(new URL("../../data/demo/flat/workshop-sheet.csv", import.meta.url)) };
    await look(page, shape("till-export.csv"));
    await bringIn(page);
    const before = await facts(page);
    await look(page, sheet);
    // 287 cells say both, 146 sea+lake. The bench changes line roller seals whatever they are like, and from July 2024 drag knob seals.
    const routine = "yes, worn or not: those count as used, not as failed";
    expect(await questions(page)).toEqual([
      ["Which water does “both” count as?", "leave the water empty; the words stay in the note"],
      ["When you service a reel, do you change the line roller seal / cap as a matter of routine?", routine],
      ["When you service a reel, do you change the drag knob seal as a matter of routine?", routine],
    ]);
    const marked = () => page.locator("li", { hasText: "was taken as changed as routine" }).allTextContents();
    await page.locator("summary", { hasText: "Put right by itself" }).click();
    expect(await marked()).toEqual([expect.stringMatching(/^\s*1,?3\d\d rows: /)]);
    for (const no of await page.getByLabel("no, only when it needs it").all()) await no.check();
    await tried(page);
    await expect.poll(marked).toEqual([]);
    for (const yes of await page.getByLabel("yes, worn or not").all()) await yes.check();
    await tried(page);
    // The clean tables hold 3,533 tickets; 19 rows have a day that cannot be, and rows keyed twice stay aside.
    expect(await foot(page)).toMatch(/^3,514 tickets and [89],\d\d\d findings will come in; 19 rows to fix; 64 rows left aside\.$/);
    await bringIn(page);
    expect((await kept("tickets")).length - 1).toBe(3514 + 1);
    await page.getByRole("button", { name: /^Take out the import/ }).last().click();
    await page.getByRole("dialog").getByRole("button", { name: "Take it out" }).click();
    await expect.poll(() => facts(page)).toEqual(before);
  });
});
