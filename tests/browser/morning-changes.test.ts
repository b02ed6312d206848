import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { closeAll, csvFile, firstPicture, openApp } from "./harness.ts";
import type { App } from "./harness.ts";
import { settled, visit } from "./visit.ts";

const SETTING = "looks at the morning sheet";
let app: App, page: Page;

/** What the ledger keeps of the last looks; a text writes it, as a slip of the disk would. */
const kept = (write: string | null = null): Promise<string | null> => page.evaluate(([name, text]) => new Promise<string | null>((done, fail) => {
  const opening = indexedDB.open("saltbench");
  opening.onerror = () => fail(opening.error as Error);
  opening.onsuccess = () => {
    const store = opening.result.transaction("settings", "readwrite").objectStore("settings"), asked = text === null ? store.get(name as string) : store.put(text, name as string);
    asked.onsuccess = () => { opening.result.close(); done(text ?? (asked.result as string | undefined) ?? null); };
    asked.onerror = () => fail(asked.error as Error);
  };
}), [SETTING, write] as const);

/** Opens the sheet anew on a day, and gives what it says of changes once all of it stands. */
async function on(day: string): Promise<string> {
  await page.clock.setFixedTime(new Date(`${day}T08:00:00Z`));
  await page.reload();
  // While the records are read the last sheet stands, which says nothing of changes.
  await said();
  await settled(page);
  return said();
}
const said = () => page.getByText(/What changed since|Nothing has changed since|From the next day on/).innerText();

/** @param out the button that takes the demo out first, where it is open */
async function bringIn(name: string, text: string, out: string | null = null) {
  await visit(page, "records");
  await page.getByLabel("Choose files").setInputFiles(csvFile(name, text));
  if (out !== null) await page.getByRole("button", { name: out }).click();
  await page.getByText(/1 new row came in/).first().waitFor();
}

beforeAll(async () => {
  app = await openApp({ path: "#/morning" });
  page = app.page;
});
afterEach(() => app.expectClean());
afterAll(closeAll);

describe("what changed since the last look", () => {
  test("nothing of a sheet that was left before it stood is kept", async () => {
    await firstPicture(app);
    await page.evaluate(() => (location.hash = "#/records"));
    await page.getByRole("heading", { level: 1, name: "Records" }).waitFor();
    expect(await kept()).toBeNull();
    await page.waitForFunction(() => document.querySelector("main [aria-busy=true], main progress") === null);
    expect(await kept()).toBeNull();
  });

  test("is told against the day before, and the same all morning", async () => {
    await page.clock.setFixedTime(new Date("2026-11-24T08:00:00Z"));
    await bringIn("bench.csv", "ticket_no,received_on,model\nB-1,2026-01-05,Withy 5\nB-2,31/02/2026,Withy 5\n", "Take the demo out and bring mine in");
    await visit(page, "morning");
    expect(await said()).toMatch(/^From the next day on/);
    expect(await on("2026-11-26")).toBe("Nothing has changed since Tuesday 24 November.");
    expect(await on("2026-11-26")).toBe("Nothing has changed since Tuesday 24 November.");
  });

  test("is marked where it is when records came in, however often the sheet is opened", async () => {
    await bringIn("more.csv", "ticket_no,received_on,model\nB-3,2026-01-06,Withy 5\nB-4,soon,Withy 5\nB-5,never,Withy 5\n");
    await visit(page, "morning");
    const changed = () => page.getByRole("region", { name: "Records", exact: true }).innerText();
    expect(await changed()).toMatch(/Changed 1 waited for an answer then, 3 now\./);
    expect(await on("2026-11-26")).toBe("What changed since your look earlier today is marked.");
    expect(await changed()).toMatch(/1 waited for an answer then, 3 now\./);
    expect(await on("2026-11-30")).toBe("Nothing has changed since Thursday 26 November.");
  });

  test("is left aside and said when what was kept is damaged, and is whole again the next day", async () => {
    await kept('{"version":1,"latest":{"day":"2026-11');
    expect(await on("2026-12-01")).toMatch(/^From the next day on/);
    await page.getByText(/What this sheet said last time cannot be read/).waitFor();
    expect(await on("2026-12-02")).toBe("Nothing has changed since Tuesday 1 December.");
  });
});
