import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { type App, closeAll, csvFile, openApp } from "./harness.ts";

/** Fewer make a quick check while working; the promise is 25. */
const KILLS = Number(process.env.SALTBENCH_KILLS ?? 25);
const TICKETS = 3_000;

const home = mkdtempSync(join(tmpdir(), "saltbench-room-kill-"));
afterAll(async () => {
  await closeAll();
  rmSync(home, { recursive: true, force: true });
});

const file = (kill: number) => csvFile(`week-${kill}.csv`, ["ticket_no,received_on,maker,model,note",
  ...Array.from({ length: TICKETS }, (_, n) => `K${kill}-${n},2026-01-05,Eldmere,Withy 5,week ${kill} row ${n}`), ""].join("\n"));

/** The names of all files of which the room lists an import, and how many rows it says are kept. */
async function listed({ page }: App): Promise<{ files: string[]; rows: number }> {
  await page.getByRole("heading", { level: 1, name: "Records", exact: true }).waitFor();
  const rows = Number((await page.locator("dl div", { hasText: "Rows kept" }).locator("dd").innerText()).replace(/\D/g, ""));
  const files = (await page.getByRole("region", { name: "What is in here" }).innerText()).match(/week-\d+\.csv/g) ?? [];
  return { files, rows };
}

test(`killed ${KILLS} times at any moment of an import through the room, the app loses none that it had kept and keeps none by half`, async () => {
  const told = new Set<string>();
  let last: App | null = null;
  for (let kill = 0; kill < KILLS; kill += 1) {
    const app = await openApp({ path: "#/records", profileDir: home });
    if (kill === 0) {
      await app.page.getByRole("button", { name: "take it out now" }).click();
      await app.page.getByText("Nothing has been brought in yet.").waitFor();
    }
    const { files, rows } = await listed(app);
    expect([...told].filter((name) => !files.includes(name)), "told as come in, and lost").toEqual([]);
    expect(rows, "rows of whole imports").toBe(files.length * TICKETS);
    await app.page.getByLabel("Choose files").setInputFiles(file(kill));
    const came = app.page.getByText(/new rows came in\./).waitFor().then(() => true, () => false);
    const waited = new Promise<boolean>((done) => setTimeout(() => done(false), (kill * 397) % 4_001));
    if (await Promise.race([came, waited])) told.add(`week-${kill}.csv`);
    await app.kill();
    last = app;
  }
  expect(last).not.toBeNull();
  const app = await openApp({ path: "#/records", profileDir: home });
  const { files, rows } = await listed(app);
  expect([...told].filter((name) => !files.includes(name))).toEqual([]);
  expect(rows).toBe(files.length * TICKETS);
  expect(told.size).toBeGreaterThan(0);
  await app.close();
}, 900_000);
