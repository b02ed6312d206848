import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { openBench, press, saved, step, takeIn } from "./bench-steps.ts";
import { type App, closeAll, openApp } from "./harness.ts";

/** Fewer make a quick check while working; the promise is 20. */
const KILLS = Number(process.env.SALTBENCH_KILLS ?? 20);
/** Fields that are written over and over, each time with another value, by the step of the ticket they stand on. */
const FIELDS = {
  in: ["Serial number, or a tag of yours", "Days in salt since the service", "Days fished in all since then", "What the customer says", "Batch, if several came together"],
  log: ["Note on this part", "Shims as found in this group: thickness and side"],
};
const LABELS = [...FIELDS.in, ...FIELDS.log];

const home = mkdtempSync(join(tmpdir(), "saltbench-bench-kill-"));
afterAll(async () => {
  await closeAll();
  rmSync(home, { recursive: true, force: true });
});

const field = ({ page }: App, label: string) => page.getByLabel(label, { exact: true });

/** Goes to a step of the ticket, and opens what has to be opened there. */
async function stand(app: App, on: "in" | "log"): Promise<void> {
  await step(app.page, on === "in" ? "Take in" : "At the bench");
  if (on === "in") return;
  // It is open already when the step did not change.
  if (await app.page.getByRole("button", { name: "Line roller (sleeve): Close" }).isVisible()) return;
  await press(app.page, /^Line roller \d/);
  await press(app.page, "Line roller (sleeve): Write");
}

async function shown(app: App): Promise<string[]> {
  const values: string[] = [];
  for (const on of ["in", "log"] as const) {
    await stand(app, on);
    for (const label of FIELDS[on]) values.push(await field(app, label).inputValue());
  }
  return values;
}

test(`killed ${KILLS} times while a reel is taken in and logged, as by a dead battery, the bench loses at most the field written last`, async () => {
  let path = "", last = 0;
  /** What each field was given, and what it held before that. */
  const given = LABELS.map(() => ""), before = LABELS.map(() => "");
  for (let kill = 0; kill <= KILLS; kill += 1) {
    const app = kill === 0 ? await openBench({ profileDir: home }) : await openApp({ path, profileDir: home });
    if (kill === 0) {
      await takeIn(app.page);
      path = new URL(app.page.url()).hash;
    }
    const there = await shown(app);
    const allowed = given.map((value, at) => (at === last ? [value, before[at]] : [value]));
    expect(there.filter((value, at) => !allowed[at]?.includes(value)), `after kill ${kill}`).toEqual([]);
    there.forEach((value, at) => { given[at] = value; });
    const on = kill % 2 === 0 ? "in" : "log";
    await stand(app, on);
    for (let write = 0; write <= (kill * 5) % 9; write += 1) {
      // Nobody writes a second field in the milliseconds the first takes to the disk: what the screen calls saved has to be there.
      await saved(app.page);
      const label = FIELDS[on][write % FIELDS[on].length] ?? "";
      last = LABELS.indexOf(label);
      [before[last], given[last]] = [given[last] ?? "", String(100 * kill + write + 1)];
      await field(app, label).fill(given[last] ?? "");
    }
    await app.kill();
  }
}, 900_000);
