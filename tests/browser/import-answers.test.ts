import type { Page } from "playwright-core";
import { unzipSync } from "fflate";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { sheetData, xlsx } from "../records/formats/making-workbooks.ts";
import { closeAll, csvFile, download, seriousViolations, TABLET } from "./harness.ts";
import type { App } from "./harness.ts";
import { bringIn, empty, fact, facts, foot, look, openRecords, questions, shape, tried } from "./import-page.ts";
import { visit } from "./visit.ts";

let app: App;
let page: Page;
const shown = (text: string | RegExp) => page.getByText(text).first().waitFor();
beforeAll(async () => {
  app = await openRecords();
  page = app.page;
});
beforeEach(() => empty(page));
afterEach(() => app.expectClean());
afterAll(closeAll);

const HEAD = "Job,Came,Reel,Done,Minutes\n";
const sheet = (rows: string, name = "jobs.csv", head = HEAD) => csvFile(name, head + rows);
const ROWS = "B-1,13/01/2026,Withy 5,wibbler cleaned,30\nB-2,14/01/2026,Withy 5,line roller bearing replaced,40\nB-3,15/01/2026,Ombry 8,wibbler replaced,25\n";

describe("answers", () => {
  test("a workbook's sheets come in, the one that is no table is left out, and answers are remembered for files of the shape", async () => {
    const book = (number: number) => ({
      name: `bench-${number}.xlsx`, mimeType: "application/octet-stream", buffer: Buffer.from(xlsx([
        { name: "Jobs", xml: sheetData([["Ticket", "In", "Reel", "Work done"], [`X-${number}`, "2026-01-05", "Withy 5", "line roller bearing replaced"]]) },
        { name: "Ideas", xml: sheetData([["buy a lamp"], ["paint the door"]]) },
      ])),
    });
    await look(page, book(1));
    await shown(/^Sheet “Ideas”: left out/);
    expect(await foot(page)).toMatch(/^1 ticket and 1 finding will come in/);
    await bringIn(page, "1 new row came in.");

    await look(page, book(2));
    await shown("Taken as last time");
    expect(await questions(page)).toEqual([]);
    await bringIn(page, "1 new row came in.");
    expect(await fact(page, "Rows kept")).toBe("4");
    const kept = page.getByRole("region", { name: "Answers kept for your files" });
    await kept.locator("summary").first().click();
    await kept.getByRole("button", { name: "Forget these answers" }).first().click();
    await shown("No answers are kept yet.");
  });

  test("a column is taken for something else, and the counts follow at once", async () => {
    await look(page, sheet("C-1,13/01/2026,Withy 5,line roller bearing replaced,30\n", "column.csv"));
    expect(await foot(page)).toBe("1 ticket and 1 finding will come in.");
    await page.getByLabel("What “Done” is taken for").selectOption({ label: "left out" });
    await expect.poll(() => foot(page)).toBe("1 ticket will come in.");
    await page.getByRole("button", { name: "Take nothing in" }).click();
    await page.getByText("Choose files").waitFor();
    expect(await facts(page)).toEqual(["0", "0", "0"]);
  });

  test("the same file again changes nothing, and can be read again in the place of its import", async () => {
    await look(page, shape("till-export.csv"));
    await bringIn(page, "3 new rows came in.");
    await look(page, shape("till-export.csv"));
    await shown(/^This came in already, on/);
    await bringIn(page, /^Nothing new/);
    expect(await facts(page)).toEqual(["3", "1", "1"]);
    await look(page, shape("till-export.csv"));
    await page.getByLabel(/Read them again/).check();
    await bringIn(page, "3 new rows came in.");
    expect(await facts(page)).toEqual(["3", "1", "1"]);
  });

  test("our own tables need no answer and come in along with a file that does", async () => {
    await look(page, [csvFile("tickets.csv", "ticket_no,received_on,model\nT-1,2026-01-05,Withy 5\n"), sheet("D-1,13/01/2026,Withy 5,serviced,30\n", "more.csv")]);
    await shown(/1 other file needs no answer and comes in along with it\./);
    await bringIn(page, "2 new rows came in.");
    expect(await facts(page)).toEqual(["2", "1", "0"]);
  });

  test("a cancel in the middle of a long file takes nothing in", async () => {
    const many = Array.from({ length: 60_000 }, (_, n) => `M-${n},13/01/2026,Withy 5,row ${n} line roller bearing cleaned,30`);
    await page.getByLabel("Choose files").setInputFiles(sheet(many.join("\n"), "many.csv"));
    await page.getByText(/^Looking at many\.csv$/).first().waitFor();
    await page.getByRole("button", { name: "Cancel" }).click();
    await shown("Cancelled. Nothing of these files was taken in.");
    expect(await facts(page)).toEqual(["0", "0", "0"]);
    await page.getByLabel("Choose files").setInputFiles(sheet(many.join("\n"), "many.csv"));
    await page.getByRole("button", { name: "Bring it in" }).click();
    await page.getByText(/^Reading many\.csv$/).first().waitFor();
    await page.getByRole("button", { name: "Cancel" }).click();
    await shown("Cancelled. Nothing of these files was taken in.");
    expect(await facts(page)).toEqual(["0", "0", "0"]);
  });
});

describe("words we did not know", () => {
  test("one answer holds for all notes, is kept in the spelling book and in the backup, and can be forgotten", async () => {
    await look(page, sheet(ROWS));
    const words = page.getByRole("region", { name: /^Words we did not know/ });
    expect(await words.getByRole("listitem").first().innerText()).toMatch(/wibbler\s+in 2 notes/);
    const before = Number((await foot(page)).match(/and (\d+) finding/)?.[1] ?? 0);
    const meaning = page.getByLabel("What “wibbler” means");
    await meaning.fill("no such thing");
    await meaning.press("Enter");
    await shown("Nothing is called “no such thing”. Choose from the list.");
    await meaning.fill("Line roller bearing");
    await meaning.press("Enter");
    await expect.poll(async () => Number((await foot(page)).match(/and (\d+) finding/)?.[1])).toBe(before + 2);
    await bringIn(page);

    const { body } = await download(page, () => page.getByRole("button", { name: "Back up all to one file" }).click());
    expect(new TextDecoder().decode(unzipSync(new Uint8Array(body))["settings.json"])).toContain("wibbler");
    const book = page.getByRole("region", { name: "Your spelling book" });
    expect(await book.getByLabel("What “wibbler” means").inputValue()).toBe("Line roller bearing");
    await book.getByRole("button", { name: "Forget “wibbler”" }).click();
    await book.getByText("Nothing in it yet.").waitFor();
  });

  test("answered after the files are in, they are read again with it", async () => {
    await look(page, sheet(ROWS, "later.csv"));
    await bringIn(page);
    const before = Number(await fact(page, "Rows kept"));
    const meaning = page.getByLabel("What “wibbler” means").first();
    await meaning.fill("Line roller bearing");
    await meaning.press("Enter");
    await page.getByRole("button", { name: "Read the files again with these answers" }).click();
    await expect.poll(() => fact(page, "Rows kept")).toBe(String(before + 2));
    expect(await fact(page, "Imports")).toBe("1");
    await page.getByRole("button", { name: "Forget “wibbler”" }).click();
  });
});

describe("readings that are not sure", () => {
  const NOTES = "B-1,13/01/2026,Withy 5,line roller seems a bit weak watch,30\nB-2,14/01/2026,Withy 5,line roller seems a bit weak watch,40\n"
    + "B-3,15/01/2026,Withy 5,line roller bearing replaced,25\n";
  const findings = async () => Number((await foot(page)).match(/(\d+) finding/)?.[1] ?? 0);

  test("stay out until they are answered, once for all notes of a wording; an answer can be taken back, and is kept in the book and the backup", async () => {
    await look(page, sheet(NOTES, "unsure.csv"));
    const asked = page.getByRole("region", { name: /^What we are not sure of/ });
    const first = asked.getByRole("listitem").first();
    expect(await first.innerText()).toMatch(/line roller seems a bit weak.*\s+in 2 notes/);
    expect(await findings()).toBe(1);
    await first.getByRole("button", { name: /^Right/ }).click();
    await expect.poll(findings).toBe(3);
    await asked.getByRole("button", { name: "Take the last one back" }).click();
    await expect.poll(findings).toBe(1);

    await first.getByRole("button", { name: /^Something else/ }).click();
    await page.getByLabel(/^The part “line roller/).fill("Bail spring");
    await first.getByLabel("What was done").selectOption({ label: "left" });
    await first.getByRole("button", { name: /^Keep this/ }).click();
    await expect.poll(findings).toBe(3);
    expect(await seriousViolations(page)).toEqual([]);
    await bringIn(page);

    const { body } = await download(page, () => page.getByRole("button", { name: "Back up all to one file" }).click());
    expect(new TextDecoder().decode(unzipSync(new Uint8Array(body))["settings.json"])).toContain("line roller seems a bit weak");
    const kept = page.getByRole("table", { name: "What you said of notes" });
    expect((await kept.getByRole("row").last().innerText()).replace(/\s+/g, " ")).toMatch(/left: bail spring Forget$/);
    await kept.getByRole("button", { name: /^Forget what/ }).click();
    await kept.waitFor({ state: "detached" });
  });

  test("may stay unanswered: the rest comes in, and an answer afterwards is read into it", async () => {
    await look(page, sheet(NOTES, "unsure-later.csv"));
    await bringIn(page);
    const before = Number(await fact(page, "Rows kept"));
    await page.getByRole("region", { name: /^What we are not sure of/ }).getByRole("button", { name: /^Right/ }).first().click();
    await page.getByRole("button", { name: "Read the files again with these answers" }).click();
    await expect.poll(() => fact(page, "Rows kept")).toBe(String(before + 2));
    await page.getByRole("button", { name: /^Forget what/ }).click();
    await visit(page, "morning");
    await page.getByRole("region", { name: "Records" }).getByText(/words? (or|and) wordings? of your notes (was|were) not understood, or not surely/).waitFor();
    await visit(page, "records");
  });
});

describe("where a number comes from", () => {
  test("a ticket names the file and line of every row behind it, from a link too; text of a file is never run", async () => {
    await look(page, sheet("B-9,13/01/2026,Withy 5,<img src=x onerror=alert(1)> line roller bearing replaced,30\n", "hostile.csv"));
    await bringIn(page, "1 new row came in.");
    await page.evaluate(() => { location.hash = "#/records?ticket=B-9"; });
    const rows = page.getByRole("table", { name: "Rows behind B-9" });
    await rows.waitFor();
    expect((await rows.getByRole("row").allInnerTexts()).slice(1).map((row) => row.replace(/\s+/g, " ")).every((row) => /hostile\.csv 2 import \d+, .* yes/.test(row))).toBe(true);
    expect(await rows.getByRole("row").count()).toBe(3);
    expect(await page.locator("main img").count()).toBe(0);
  });
});

test("what was understood passes axe in light and dark at both sizes, and the keyboard reaches every answer", async () => {
  await look(page, shape("web-form.csv"));
  await page.evaluate(() => { for (const folded of document.querySelectorAll("main details")) folded.setAttribute("open", ""); });
  for (const [viewport, colorScheme] of [[{ width: 1366, height: 768 }, "light"], [TABLET, "dark"]] as const) {
    await page.setViewportSize(viewport);
    await page.emulateMedia({ colorScheme });
    expect(await seriousViolations(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  }
  await page.setViewportSize({ width: 1366, height: 768 });
  await page.emulateMedia({ colorScheme: "light" });
  await page.getByRole("heading", { name: /^What we understood of/ }).focus();
  await page.keyboard.press("Tab");
  expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).type)).toBe("radio");
  await page.keyboard.press("ArrowDown");
  await tried(page);
  expect((await questions(page))[0]?.[1]).toBe("the month comes first");
});
