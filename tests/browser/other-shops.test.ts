import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import type { Page } from "playwright-core";
import { rollUpFileOf } from "../../src/answers/elsewhere/roll-up.ts";
import { closeAll, openApp, seriousViolations } from "./harness.ts";
import type { App } from "./harness.ts";
import { visit } from "./visit.ts";

const ROWS = [1, 2, 3].map((shop) => ({ shop, position: "ar_clutch", maker: "Brackhelm", model: "Whinbeck 40", condition: 259, inspected: 200, failed: 6 }));
const given = async () => ({ name: "roll-up.arrow", mimeType: "application/octet-stream", buffer: Buffer.from(await rollUpFileOf(ROWS)) });
let app: App, page: Page;
beforeAll(async () => {
  app = await openApp({ path: "#/failures" });
  page = app.page;
  await page.getByRole("heading", { name: "Other shops" }).waitFor({ timeout: 240_000 });
}, 300_000);
afterEach(() => app.expectClean());
afterAll(closeAll);

describe("other shops", () => {
  const choose = async (file: { name: string; mimeType: string; buffer: Buffer }) => page.getByLabel(/^Take in/).setInputFiles(file);

  test("whose file is damaged are refused in a sentence, and nothing is kept", async () => {
    const good = await given(), buffer = Buffer.from(good.buffer);
    buffer[300] = (buffer[300] ?? 0) ^ 1;
    await choose({ ...good, buffer });
    await page.getByText("This roll-up is not as it was written: its checksum does not fit. Ask for the file again.").waitFor();
    expect(await page.getByText("Take the other shops out").count()).toBe(0);
  });

  test("stand beside a model's parts once their roll-up is taken in, also after a reload", async () => {
    await choose(await given());
    await page.getByText(/^Counts of 3 shops on 1 model, taken in on /).waitFor();
    await page.reload();
    await visit(page, "failures?model=Brackhelm+Whinbeck+40");
    const panel = page.getByRole("region", { name: "At other shops" });
    await panel.getByText(/here \d+ of \d+; elsewhere 18 of 600 in 3 shops\. Fails more often here: anti-reverse clutch/).waitFor({ timeout: 240_000 });
    expect(await seriousViolations(page)).toEqual([]);
  }, 300_000);

  test("go when they are taken out", async () => {
    await visit(page, "failures");
    await page.getByRole("button", { name: "Take the other shops out" }).click();
    await page.getByText(/holds counts only: no customer, no reel and no shop by name/).waitFor();
    await visit(page, "failures?model=Brackhelm+Whinbeck+40");
    await page.getByRole("heading", { name: "What it comes in for" }).waitFor({ timeout: 240_000 });
    expect(await page.getByRole("region", { name: "At other shops" }).count()).toBe(0);
  }, 300_000);
});
