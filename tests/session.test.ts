import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from "vitest";
import type { Engine } from "../src/db/engine.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { openMemoryBench } from "../src/records/bench-log/memory-bench.ts";
import { LedgerNewer, LedgerUnavailable } from "../src/records/ledger/errors.ts";
import { lookHere } from "../src/records/looking/look.ts";
import { MemoryShelf, openMemoryLedger } from "../src/records/ledger/memory-ledger.ts";
import { readFile } from "../src/records/reading/read-file.ts";
import { Session } from "../src/session.svelte.ts";
import type { World } from "../src/world.ts";

const template = (table: string) => new Blob([readFileSync(new URL(`../data/templates/${table}.csv`, import.meta.url))]);
const TICKETS = { name: "tickets.csv", blob: template("tickets") };
const OWN = { name: "own.csv", blob: new Blob(["ticket_no,received_on,model\nX-1,2026-01-05,Withy 5\nX-2,soon,Withy 5\n"]) };
const quiet = () => undefined;
const never = new AbortController().signal;

/** Starting an engine is the slow part; each session empties the one it is given, so they can use it one after the other. */
let shared: Engine;
beforeAll(async () => void (shared = await openNodeEngine()));
afterAll(() => shared.close());

async function ownEngine(): Promise<Engine> {
  const engine = await openNodeEngine();
  onTestFinished(() => engine.close());
  return engine;
}

/** A browser with one disk (`shelf`) and a clock that stands still. */
function place(shelf = new MemoryShelf(), change: Partial<World> = {}): World {
  const bench = openMemoryBench();
  return {
    openLedger: async () => openMemoryLedger(shelf),
    openBench: async () => bench,
    openEngine: async () => shared,
    read: readFile,
    look: lookHere,
    demoFiles: async () => [TICKETS],
    keeping: async (ask) => (ask ? "kept" : "at risk"),
    alone: (work) => work(),
    day: () => "2026-11-25",
    ...change,
  };
}

async function started(world: World): Promise<Session> {
  const session = new Session();
  await session.start(world);
  return session;
}

const tickets = async (session: Session) =>
  (await session.engine?.rows<{ ticket_no: string }>("-- Tickets.\n-- Parameters:\n-- Columns: ticket_no varchar\nselect ticket_no from visits order by ticket_no"))
    ?.map((row) => row.ticket_no);

describe("a first visit", () => {
  test("opens the demo under its own name and money, as of the newest day written in it", async () => {
    const session = await started(place());
    expect([session.status, session.demo, session.trouble]).toEqual(["ready", true, null]);
    expect([session.shop, session.currency, session.today]).toEqual(["Harrow Quay Reel Bench", "cu", "2026-03-09"]);
    expect(await tickets(session)).toEqual(["R-0001"]);
  });

  test("with a demo that cannot be had says so and stays usable", async () => {
    const session = await started(place(undefined, { demoFiles: () => Promise.reject(new Error("404")) }));
    expect([session.status, session.bare]).toEqual(["ready", true]);
    expect(session.trouble).toMatch(/^The demo could not be opened\. .*404/);
  });
});

describe("a later visit", () => {
  test("finds the records of the one before and imports nothing anew", async () => {
    const shelf = new MemoryShelf();
    await started(place(shelf));
    const session = await started(place(shelf, { demoFiles: () => Promise.reject(new Error("asked again")) }));
    expect([session.demo, session.batches.length, session.trouble]).toEqual([true, 1, null]);
    expect(await tickets(session)).toEqual(["R-0001"]);
  });

  test("does not bring back a demo that was removed", async () => {
    const shelf = new MemoryShelf();
    const session = await started(place(shelf));
    await session.removeAll();
    expect([session.bare, session.shop, session.today]).toEqual([true, null, "2026-11-25"]);
    expect((await started(place(shelf))).bare).toBe(true);
  });

  test("remembers the shop's name and word for money", async () => {
    const shelf = new MemoryShelf();
    const session = await started(place(shelf));
    await session.keepShop(" Tolness Reels ");
    await session.keepCurrency("€");
    const later = await started(place(shelf));
    expect([later.shop, later.currency]).toEqual(["Tolness Reels", "€"]);
  });
});

describe("bringing in own files", () => {
  test("takes the demo out first, so that invented and real records never stand together", async () => {
    const session = await started(place());
    const imported = await session.bringIn([OWN], never, quiet);
    expect(imported.files[0]).toMatchObject({ rows_read: 2, rows_new: 1, rows_to_fix: 1 });
    expect(session.batches.map((batch) => batch.origin)).toEqual(["files"]);
    expect(await tickets(session)).toEqual(["X-1"]);
    expect([session.today, session.keeping]).toEqual(["2026-11-25", "kept"]);
    expect((await session.rejects()).map((row) => row.line)).toEqual([3]);
  });

  test("refuses the demo while records are there", async () => {
    const session = await started(place());
    await session.bringIn([OWN], never, quiet);
    await expect(session.openDemo(never, quiet)).rejects.toThrow(RangeError);
  });

  test("a cancel leaves nothing and the next import works", async () => {
    const session = await started(place());
    await session.removeAll();
    await expect(session.bringIn([OWN], AbortSignal.abort("stop"), quiet)).rejects.toBe("stop");
    expect([session.bare, await tickets(session)]).toEqual([true, []]);
    await session.bringIn([OWN], never, quiet);
    expect(await tickets(session)).toEqual(["X-1"]);
  });

  test("one import can be taken out again", async () => {
    const session = await started(place());
    await session.bringIn([OWN], never, quiet);
    const before = session.version, [batch] = session.batches;
    if (batch) await session.takeOut(batch);
    expect([session.bare, await tickets(session)]).toEqual([true, []]);
    expect(session.version).toBeGreaterThan(before);
  });
});

describe("reading the files of an import again", () => {
  test("takes the place of the import, and leaves it as it was when the files cannot be read", async () => {
    let breaks = false;
    const read: World["read"] = (file, options) => (breaks ? Promise.reject(new Error("no disk")) : readFile(file, options));
    const session = await started(place(undefined, { read }));
    await session.bringIn([OWN], never, quiet);
    const [before] = session.batches;
    breaks = true;
    await expect(session.bringIn([OWN], never, quiet, { answers: [], instead_of: before ?? null })).rejects.toThrow("no disk");
    expect([await tickets(session), session.batches.length, (await session.rejects()).length]).toEqual([["X-1"], 1, 1]);
    breaks = false;
    await session.bringIn([OWN], never, quiet, { answers: [], instead_of: session.batches[0] ?? null });
    expect([await tickets(session), session.batches.length, (await session.rejects()).length]).toEqual([["X-1"], 1, 1]);
  });
  test.each([
    ["the files are being read", "read"], ["the new import is being written", "append"],
  ])("loses nothing when the page is closed while %s", async (_, at) => {
    const shelf = new MemoryShelf(), first = await started(place(shelf));
    await first.bringIn([OWN], never, quiet);
    const [before] = shelf.kept.map(({ batch }) => batch);
    // What is never answered is what a closed page leaves behind.
    let reached: () => void = quiet;
    const there = new Promise<void>((resolve) => (reached = resolve)), closed = () => { reached(); return new Promise<never>(quiet); };
    const read: World["read"] = at === "read" ? closed : readFile;
    const openLedger: World["openLedger"] = async () => ({ ...openMemoryLedger(shelf), ...(at === "append" ? { append: closed } : {}) });
    const dying = await started(place(shelf, { read, openLedger, openEngine: ownEngine }));
    void dying.bringIn([OWN], never, quiet, { answers: [], instead_of: dying.batches[0] ?? null });
    await there;
    expect(shelf.kept.map(({ batch }) => batch)).toEqual([before]);
    const after = await started(place(new MemoryShelf(), { openLedger: async () => openMemoryLedger(shelf) }));
    expect([await tickets(after), after.batches.map(({ id }) => id), (await after.rejects()).length]).toEqual([["X-1"], [before?.id], 1]);
  });
  test("can be cancelled, and the import stays", async () => {
    const session = await started(place());
    await session.bringIn([OWN], never, quiet);
    const [before] = session.batches, stop = new AbortController();
    const report = () => stop.abort(new DOMException("no more", "AbortError"));
    await expect(session.bringIn([OWN], stop.signal, report, { answers: [], instead_of: before ?? null })).rejects.toThrow("no more");
    expect([await tickets(session), session.batches.map(({ id }) => id)]).toEqual([["X-1"], [before?.id]]);
  });
});

describe("a backup", () => {
  test("brings back records, rows to fix and settings in the place of everything, the demo too", async () => {
    const session = await started(place());
    await session.bringIn([OWN], never, quiet);
    await session.keepShop("Tolness Reels");
    const backup = await session.backup();
    const other = await started(place());
    expect(other.demo).toBe(true);
    await other.restore(backup, never, quiet);
    expect([other.demo, other.shop, await tickets(other)]).toEqual([false, "Tolness Reels", ["X-1"]]);
    expect((await other.rejects()).map((row) => row.line)).toEqual([3]);
  });

  test("that is none is refused, and everything stays as it was", async () => {
    const session = await started(place());
    await session.bringIn([OWN], never, quiet);
    await expect(session.restore(new Blob(["no zip at all"]), never, quiet)).rejects.toMatchObject({ name: "BackupRefused" });
    expect([session.batches.length, await tickets(session)]).toEqual([1, ["X-1"]]);
  });
});

describe("when the world fails", () => {
  test("without storage everything works and the owner is told that nothing is kept", async () => {
    const session = await started(place(undefined, { openLedger: () => Promise.reject(new LedgerUnavailable("private window.")) }));
    expect([session.status, session.keeping]).toEqual(["ready", "not at all"]);
    expect(session.trouble).toMatch(/private window.*gone when you close this window/);
    await session.bringIn([OWN], never, quiet);
    expect([session.keeping, await tickets(session)]).toEqual(["not at all", ["X-1"]]);
  });

  test("records of a newer Saltbench stop it before anything is written", async () => {
    const session = await started(place(undefined, { openLedger: () => Promise.reject(new LedgerNewer()) }));
    expect([session.status, session.engine, session.trouble]).toEqual(["stopped", null, new LedgerNewer().message]);
  });

  test("an engine that dies is started again and filled, and the owner is told", async () => {
    const engines = [await ownEngine(), shared], left = [...engines];
    const session = await started(place(undefined, { openEngine: async () => left.shift() ?? shared })), before = session.version;
    await engines[0]?.close();
    await expect(tickets(session)).rejects.toMatchObject({ name: "EngineGone" });
    await expect.poll(() => session.version, { timeout: 20_000 }).toBeGreaterThan(before);
    expect([session.status, left]).toEqual(["ready", []]);
    expect(session.trouble).toMatch(/started again/);
    expect(await tickets(session)).toEqual(["R-0001"]);
  });

  test("an engine that does not come back stops the app with a reason", async () => {
    const engine = await ownEngine(), world = place(undefined, { openEngine: async () => engine }), session = await started(world);
    world.openEngine = () => Promise.reject(new Error("no memory"));
    await engine.close();
    await expect(tickets(session)).rejects.toThrow();
    await expect.poll(() => session.status).toBe("stopped");
    expect(session.trouble).toMatch(/no memory/);
  });
});

test("what another tab brings in or takes out shows here too", async () => {
  const shelf = new MemoryShelf();
  const here = await started(place(shelf)), there = await started(place(shelf, { openEngine: ownEngine }));
  await there.bringIn([OWN], never, quiet);
  await expect.poll(() => here.demo, { timeout: 20_000 }).toBe(false);
  await expect.poll(() => tickets(here)).toEqual(["X-1"]);
});

describe("what is at the bench", () => {
  test("outlives a demo that is put away, goes with the backup, and goes when all is removed", async () => {
    const session = await started(place()), bench = await session.bench(), { id } = await bench.begin({ ticket_no: "B-1" });
    await session.putDemoAway();
    expect([session.bare, (await bench.tickets()).map((ticket) => ticket.id)]).toEqual([true, [id]]);
    const backup = await session.backup(), other = await started(place());
    await other.restore(backup, never, quiet);
    expect((await (await other.bench()).tickets()).map((ticket) => ticket.id)).toEqual([id]);
    await session.removeAll();
    expect(await bench.tickets()).toEqual([]);
  });
});
