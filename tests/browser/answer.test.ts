import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { closeAll, openApp } from "./harness.ts";
import type { App } from "./harness.ts";
import { builtPage } from "./pages/built.ts";

let built: Awaited<ReturnType<typeof builtPage>>, app: App;
beforeAll(async () => { built = await builtPage(join(import.meta.dirname, "answer-page")); });
beforeEach(async () => { app = await openApp({ folder: built.folder }); });
afterEach(async () => {
  app.expectClean();
  await app.close();
});
afterAll(async () => {
  await closeAll();
  built.remove();
});

const press = (name: string) => app.page.getByRole("button", { name, exact: true }).click();
const shown = (text: string) => app.page.getByText(text, { exact: true }).waitFor();

describe("a question on a sheet", () => {
  test("shows how far it has come, and can be called off and asked again", async () => {
    await press("waits");
    await shown("Counting");
    await shown("30 %");
    await press("Cancel");
    await shown("Cancelled");
    await shown("Cancelled: 1");
    await press("Work it out");
    await shown("30 %");
  });

  test("says in a sentence that it failed, and answers when tried again", async () => {
    await press("fails");
    await shown("This could not be worked out");
    await shown("Something went wrong that Saltbench did not expect: the shelf fell down");
    await press("mend");
    await press("Try again");
    await shown("Answer: mended");
    expect(await app.page.getByText("This could not be worked out").count()).toBe(0);
  });

  test("calls the old question off when a new one comes, and keeps the last answer until the new one stands", async () => {
    await press("first");
    await shown("Answer: first");
    await press("waits");
    await shown("Answer: first");
    expect(await app.page.locator("[aria-busy=true]").count()).toBe(1);
    await press("second");
    await shown("Answer: second");
    await shown("Cancelled: 1");
    expect(await app.page.locator("[aria-busy=true]").count()).toBe(0);
  });

  test("marks the first picture only once an answer stands", async () => {
    const mark = () => app.page.evaluate(() => performance.getEntriesByName("saltbench:first-picture").length);
    await press("waits");
    await shown("30 %");
    expect(await mark()).toBe(0);
    await press("first");
    await shown("Answer: first");
    await press("second");
    await shown("Answer: second");
    expect(await mark()).toBe(1);
  });
});
