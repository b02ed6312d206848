import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import type { Page } from "playwright-core";
import { unzipSync } from "fflate";
import { finish, openBench, press, saved, step, takeIn, touch, write } from "./bench-steps.ts";
import { type App, closeAll, csvFile, download, openApp, seriousViolations, TABLET } from "./harness.ts";
import { cells, visit } from "./visit.ts";

let app: App, page: Page;
beforeAll(async () => {
  app = await openBench({ viewport: TABLET });
  page = app.page;
  page.setDefaultTimeout(60_000);
});
afterEach(() => app.expectClean());
afterAll(closeAll);

/** A photo as a tablet takes it: large, and JPEG. */
async function photo(): Promise<Buffer> {
  const url = await page.evaluate(() => {
    const canvas = Object.assign(document.createElement("canvas"), { width: 3000, height: 2000 });
    canvas.getContext("2d")?.fillRect(500, 500, 900, 700);
    return canvas.toDataURL("image/jpeg", 0.95);
  });
  return Buffer.from(url.replace(/^.*,/, ""), "base64");
}

describe("an empty shop begins at the bench", () => {
  test("a reel comes in, is logged group by group, checked and finished, and stands in the records", async () => {
    await press(page, "Take a reel in");
    expect(await page.getByLabel("Ticket number").inputValue()).toBe("0001");
    await write(page, "Model, with its size", "Whinbeck 40");
    await write(page, "Maker", "Brackhelm");
    await touch(page, "Kind of reel", "spinning");
    await touch(page, "Fished in", "salt");
    await touch(page, "Rinsed after use", "not known");
    await write(page, "Days in salt since the service", "40");
    await touch(page, "Came in for", "planned");
    await touch(page, "Job", "full service");
    expect(await seriousViolations(page)).toEqual([]);

    await step(page, "At the bench");
    await press(page, "Start the timer");
    await press(page, "Spool and drag: All fine");
    await page.getByText("13 of 13 written, all fine").waitFor();
    await press(page, /^Line roller \d/);
    await press(page, "Line roller (sleeve): Write");
    await touch(page, "Grade", "4 failed");
    await touch(page, "Done", "wanted, not in stock");
    await write(page, "Part", "LR-40");
    await write(page, "Pieces", "1");
    await page.getByLabel("What is wrong").selectOption("grooved");
    await write(page, "Shims as found in this group: thickness and side", "0.1 outside");
    await page.getByLabel("Take a photo of Line roller").setInputFiles({ name: "roller.jpg", mimeType: "image/jpeg", buffer: await photo() });
    await page.getByRole("img", { name: /^Photo of Line roller/ }).waitFor();
    await press(page, "Line roller: The rest is fine");
    expect(await seriousViolations(page)).toEqual([]);

    await step(page, "Checks");
    await write(page, "Back-turn of the handle", "2");
    await touch(page, "Seal test", "passed");
    expect(await seriousViolations(page)).toEqual([]);
    await finish(page);
    await visit(page, "records");
    expect((await cells(page, "Imports, oldest first"))[1]?.slice(1, 4)).toEqual(["the bench", "Bench log, ticket 0001 › tickets, Bench log, ticket 0001 › findings", "18"]);
    await page.getByText("The bench log (1 ticket, with photos) is in the backup too").waitFor();
  });

  test("the answers know the ticket at once: the failures room counts what was written and what one touch found fine", async () => {
    await visit(page, "failures?denominator=strict");
    const row = async (part: string) => (await page.getByRole("row", { name: new RegExp(`^${part}`) }).innerText()).split(/\s*\t\s*/).slice(1, 4);
    expect(await row("Line roller \\(sleeve\\)")).toEqual(["too few", "1", "1"]);
    expect(await row("Drag knob seal")).toEqual(["too few", "1", "0"]);
  });

  test("a finished ticket can be opened again, and finished once more it takes the place of what went in", async () => {
    await visit(page, "bench");
    await page.getByRole("link", { name: /^0001, Brackhelm Whinbeck 40/ }).click();
    await page.getByRole("img", { name: /^Photo of Line roller/ }).waitFor();
    await press(page, "Open it again to correct it");
    await step(page, "Finish");
    await write(page, "Minutes at the bench", "55");
    await press(page, "Finish: put the ticket into the records");
    await page.getByText("This ticket is in the records").waitFor();
    await visit(page, "records");
    expect((await cells(page, "Imports, oldest first")).map((row) => row[3])).toEqual(["Rows kept", "18"]);
    expect(await page.getByRole("region", { name: "Tickets that contradict themselves" }).getByRole("table").count()).toBe(0);
  });

  test("the next reel gets the next number, and its kind and maker come along with a model the shop knows", async () => {
    await visit(page, "bench");
    await press(page, "Take a reel in");
    expect(await page.getByLabel("Ticket number").inputValue()).toBe("0002");
    await press(page, "Brackhelm Whinbeck 40");
    expect([await page.getByLabel("Maker", { exact: true }).inputValue(), await page.getByRole("radio", { name: "spinning" }).isChecked()]).toEqual(["Brackhelm", true]);
    await write(page, "Ticket number", "1");
    await write(page, "Ticket number", "0001");
    await page.getByRole("alert").filter({ hasText: "The records have 0001 already: Brackhelm Whinbeck 40" }).waitFor();
    await write(page, "Ticket number", "0002");
  });

  test("what the records would send back is told before, and the ticket cannot be finished until it is put right", async () => {
    await write(page, "Days in salt since the service", "40");
    await write(page, "Days fished in all since then", "4o");
    await page.getByText("“4o” is not a number; write figures alone, such as 12.5.").waitFor();
    await step(page, "Finish");
    await page.getByText("Not yet: the records would send this back").waitFor();
    expect(await page.getByRole("button", { name: "Finish: put the ticket into the records" }).isDisabled()).toBe(true);
    await step(page, "Take in");
    await write(page, "Days fished in all since then", "44");
    await finish(page);
  });
});

describe("what is at the bench", () => {
  test("is in the backup with its photos, comes back with it, and goes when all is removed", async () => {
    await visit(page, "bench");
    await takeIn(page, "Ombry 8");
    await visit(page, "records");
    const { body } = await download(page, () => press(page, "Back up all to one file"));
    expect(Object.keys(unzipSync(body)).filter((name) => /bench-log|photos/.test(name)).map((name) => name.replace(/-[0-9a-f-]{36}/, "")).sort()).toEqual(["bench-log.json", "photos/0001-Line-roller.jpg"]);
    await press(page, "Remove all records");
    await page.getByRole("dialog").getByText("and with them the tickets at the bench and their photos").waitFor();
    await press(page, "Remove all");
    await page.getByText("Nothing has been brought in yet.").waitFor();
    await visit(page, "bench");
    await page.getByText("No ticket is at the bench.").waitFor();
    await visit(page, "records");
    await page.getByLabel("Restore a backup").setInputFiles({ name: "b.zip", mimeType: "application/zip", buffer: body });
    await press(page, "Restore it");
    await page.getByText("a backup").first().waitFor();
    await visit(page, "bench");
    await page.getByRole("link", { name: /Ombry 8/ }).waitFor();
    expect(await page.getByRole("link", { name: /^000[12], Brackhelm/ }).count()).toBe(2);
  });

  test("can be thrown away, after a question", async () => {
    await page.getByRole("link", { name: /Ombry 8/ }).click();
    await press(page, "Throw this ticket away");
    await press(page, "Throw it away");
    await page.getByText("No ticket is at the bench.").waitFor();
  });

  test("a shop with its own records counts on in its own numbers", async () => {
    await visit(page, "records");
    await page.getByLabel("Choose files").setInputFiles(csvFile("week.csv", "ticket_no,received_on,maker,model,reel_kind\nR-1041,2026-11-01,Eldmere,Withy 5,fly\nR-1042,2026-11-02,Eldmere,Withy 5,fly\nR-1043,2026-11-03,Eldmere,Withy 5,fly\n"));
    await page.getByText(/came in\./).first().waitFor();
    await visit(page, "bench");
    await press(page, "Take a reel in");
    expect(await page.getByLabel("Ticket number").inputValue()).toBe("R-1044");
  });
});

test("the bench is worked with the keyboard alone, and what gets the focus is not under the bar", async () => {
  const field = page.getByLabel("Model, with its size", { exact: true });
  await field.focus();
  await page.keyboard.type("Withy 6");
  for (let at = 0; at < 40 && !(await page.evaluate(() => document.activeElement?.textContent?.includes("Next: At the bench"))); at += 1) {
    await page.keyboard.press("Tab");
    const hidden = await page.evaluate(() => {
      const bar = document.querySelector(".bar")?.getBoundingClientRect(), at = document.activeElement?.getBoundingClientRect();
      return bar && at && !document.activeElement?.closest(".bar") ? at.bottom > 0 && at.bottom <= bar.bottom && at.top >= bar.top : false;
    });
    expect(hidden).toBe(false);
  }
  await page.keyboard.press("Enter");
  await page.locator("nav a[aria-current=step]", { hasText: "At the bench" }).waitFor();
  await saved(page);
});

test("every control of the bench is at least 44 px high on a tablet", async () => {
  await touch(page, "Kind of reel", "spinning");
  await touch(page, "Job", "full service");
  await press(page, /^Rotor and bail \d/);
  await press(page, "Bail wire: Write");
  await touch(page, "Done", "replaced");
  const small = await page.evaluate(() => [...document.querySelectorAll<HTMLElement>("main :is(a, button, summary, select, input:not([type=radio], [type=file]), textarea, label:has(input[type=radio]) span)")]
    .filter((one) => one.offsetParent !== null && one.getBoundingClientRect().height < 44).map((one) => `${one.tagName} ${one.textContent.slice(0, 30)} ${one.getBoundingClientRect().height}`));
  expect(small).toEqual([]);
});

test("with the demo open nothing is taken in: invented and real never mix, and the bench says what to do", async () => {
  const demo = await openApp({ path: "#/bench" });
  await demo.page.getByText("What is on show is an invented shop.").waitFor();
  expect([await demo.page.getByRole("button", { name: "Take a reel in" }).count(), await seriousViolations(demo.page)]).toEqual([0, []]);
  demo.expectClean();
  await demo.close();
});
