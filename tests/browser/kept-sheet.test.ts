import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { closeAll, firstPicture, openApp } from "./harness.ts";

const home = mkdtempSync(join(tmpdir(), "saltbench-kept-sheet-"));
afterAll(async () => {
  await closeAll();
  rmSync(home, { recursive: true, force: true });
});

const marks = () => ["saltbench:kept-picture", "saltbench:first-picture"].map((name) => performance.getEntriesByName(name)[0]?.startTime ?? null);

test("the next morning begins with the last sheet, said to be that, until the records are read; without records there is none", async () => {
  const first = await openApp({ profileDir: home });
  await firstPicture(first);
  await first.page.waitForFunction(() => localStorage.getItem("saltbench:sheet") !== null);
  const kept = await first.page.evaluate(() => localStorage.getItem("saltbench:sheet") ?? "");
  expect(await first.page.evaluate(marks)).toEqual([null, expect.any(Number)]);
  await first.close();

  const second = await openApp({ profileDir: home });
  await second.page.addInitScript(() => {
    new MutationObserver(() => {
      const text = document.querySelector("main")?.textContent ?? "";
      if (text.includes("As this sheet stood on")) sessionStorage.setItem("seen", text);
    }).observe(document, { subtree: true, childList: true });
  });
  await second.page.reload();
  await firstPicture(second);
  const [at_once, worked_out] = await second.page.evaluate(marks);
  expect(at_once).toBeLessThan(worked_out ?? 0);
  const plain = (text: string) => text.replace(/\s/g, " "), seen = plain(await second.page.evaluate(() => sessionStorage.getItem("seen") ?? ""));
  const { parts } = JSON.parse(kept.slice(kept.indexOf("\n") + 1)) as { parts: { items: { figure: string }[] }[] };
  const figures = parts.flatMap(({ items }) => items.map(({ figure }) => plain(figure)));
  expect(figures.length).toBeGreaterThan(5);
  expect(figures.filter((figure) => !seen.includes(figure))).toEqual([]);
  await second.page.getByText("As this sheet stood on").waitFor({ state: "detached" });
  second.expectClean();

  await second.page.goto(`${second.url}#/records`);
  await second.page.getByRole("button", { name: "take it out now" }).click();
  await second.page.getByText("Nothing has been brought in yet.").waitFor();
  expect(await second.page.evaluate(() => localStorage.getItem("saltbench:sheet"))).toBeNull();
  await second.close();
}, 300_000);
