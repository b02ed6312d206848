import { describe, expect, test } from "vitest";
import { KeptProgram } from "../../src/offline/kept-program.svelte.ts";
import { counted, writesUnderWay } from "../../src/records/ledger/write-count.ts";
import { during, hold } from "../../src/ui/unfinished.ts";

/** Asks for the newer version while `work` runs; says what had been done when the page was loaded. */
async function loadedAfter(work: (done: (deed: string) => void) => Promise<unknown>): Promise<string[]> {
  const deeds: string[] = [], program = new KeptProgram();
  const working = work((deed) => deeds.push(deed));
  await program.loadNewer(() => writesUnderWay() > 0, () => deeds.push("loaded"));
  await working;
  return deeds;
}
const soon = () => new Promise((done) => setTimeout(done, 250));

describe("the newer version is loaded", () => {
  test("after an order mark that is on its way to the disk", async () => {
    expect(await loadedAfter((done) => counted(async () => { await soon(); done("marked"); }))).toEqual(["marked", "loaded"]);
  });

  test("after an import that runs, and after one that fails", async () => {
    expect(await loadedAfter((done) => during("your records are written", async () => { await soon(); done("imported"); }))).toEqual(["imported", "loaded"]);
    const failing = (done: (deed: string) => void) => during("your records are written", async () => { await soon(); done("failed"); throw new Error("full"); }).catch(() => undefined);
    expect(await loadedAfter(failing)).toEqual(["failed", "loaded"]);
  });

  test("not while the owner has something half way, and at the next asking once that is ended", async () => {
    const release = hold({ until: "the files you chose are brought in, or left out", ends: "by the owner" }), program = new KeptProgram();
    let loaded = 0;
    const ask = () => program.loadNewer(() => false, () => (loaded += 1));
    await ask();
    expect([loaded, program.waits_for?.until]).toEqual([0, "the files you chose are brought in, or left out"]);
    release();
    await ask();
    expect([loaded, program.waits_for]).toEqual([1, null]);
  });
});

test("a page that runs from its sources keeps nothing and says no version", async () => {
  const program = new KeptProgram();
  await program.start();
  expect([program.version, program.kept, program.newer]).toEqual([null, "sources", null]);
});
