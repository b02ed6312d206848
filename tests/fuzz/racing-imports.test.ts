import fc from "fast-check";
import { expect, test } from "vitest";
import type { Ledger } from "../../src/records/ledger/ledger.ts";
import { MemoryShelf, openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { newBatch } from "../records/ledger/contract.ts";
import { allAtOnce, inAnyOrder, ORDERS } from "./any-order.ts";

/** What a window does to the ledger, on its own or with the import that all of them see. */
const deed = fc.constantFrom("bring in", "take out", "read again", "restore", "change a setting", "remove all");
const deeds = fc.array(fc.array(deed, { minLength: 1, maxLength: 3 }), { minLength: 2, maxLength: 3 });

/** What a window was told of one deed. */
interface Told { readonly what: string; readonly id: string | null; readonly gone: boolean }

async function does(ledger: Ledger, what: string, first: string, name: string): Promise<Told> {
  try {
    if (what === "bring in") return { what, id: (await ledger.alone(() => ledger.append(newBatch(2)))).id, gone: false };
    if (what === "read again") return { what, id: (await ledger.alone(() => ledger.append(newBatch(3), first))).id, gone: false };
    if (what === "restore") return { what, id: (await ledger.alone(() => ledger.replaceAll(newBatch(4), { shop: "of the backup" }))).id, gone: false };
    if (what === "take out") return { what, id: null, gone: !(await ledger.remove(first, { over: null, demo: "no" })) };
    if (what === "remove all") await ledger.clear({ demo: "no" });
    else await ledger.changeSetting("list", (kept) => `${kept ?? ""}${name},`);
    return { what, id: null, gone: false };
  } catch (error) {
    if (!(error instanceof Error) || error.name !== "ImportGone") throw error;
    return { what, id: null, gone: true };
  }
}

/** Whether telling the deeds one after the other, each window's in its order, can come to what was found. */
function canComeOfTurns(all: readonly (readonly Told[])[], found: string): boolean {
  const seen = new Set<string>();
  const go = (at: readonly number[], batches: readonly string[], settings: Readonly<Record<string, string>>): boolean => {
    const text = JSON.stringify([at, [...batches].sort(), settings]);
    if (seen.has(text)) return false;
    seen.add(text);
    if (at.every((next, window) => next === all[window]?.length)) return text === JSON.stringify([at, ...(JSON.parse(found) as unknown[])]);
    return at.some((next, window) => {
      const told = all[window]?.[next];
      if (!told) return false;
      const onward = (now: readonly string[], kept = settings) => go(at.map((one, other) => (other === window ? one + 1 : one)), now, kept), there = batches.includes("first");
      const without = Object.fromEntries(Object.entries(settings).filter(([name]) => name !== "over"));
      if (told.what === "bring in") return onward([...batches, told.id ?? ""]);
      if (told.what === "restore") return onward([told.id ?? ""], { shop: "of the backup" });
      if (told.what === "remove all") return onward([], { demo: "no" });
      if (told.what === "change a setting") return onward(batches, Object.fromEntries(Object.entries({ ...settings, list: `${settings["list"] ?? ""}${window} ${next},` }).sort()));
      if (told.gone) return !there && onward(batches);
      return there && (told.what === "take out" ? onward(batches.filter((one) => one !== "first"), Object.fromEntries(Object.entries({ ...without, demo: "no" }).sort()))
        : onward([...batches.filter((one) => one !== "first"), told.id ?? ""]));
    });
  };
  return go(all.map(() => 0), ["first"], { over: "the demo" });
}

test("whatever two or three windows do to the ledger at once comes to what it would come to one after the other, and each hears what became of it", async () => {
  await fc.assert(fc.asyncProperty(fc.scheduler(), deeds, async (s, all) => {
    const shelf = new MemoryShelf(), first = await openMemoryLedger(shelf).append(newBatch(1));
    await openMemoryLedger(shelf).keepSetting("over", "the demo");
    const told = await allAtOnce(s, all.map(async (own, window) => {
      const ledger = inAnyOrder(openMemoryLedger(shelf), s, `window ${window}`), heard: Told[] = [];
      for (const [at, what] of own.entries()) heard.push(await does(ledger, what, first.id, `${window} ${at}`));
      return heard;
    }));
    const left = (await openMemoryLedger(shelf).batches()).map(({ id }) => (id === first.id ? "first" : id)).sort();
    const settings = Object.fromEntries(Object.entries(await openMemoryLedger(shelf).settings()).sort());
    expect(canComeOfTurns(told, JSON.stringify([left, settings])), JSON.stringify({ told, left, settings })).toBe(true);
  }), { numRuns: ORDERS });
});

test("of windows that take one import out, or read it again, at once exactly one does; the others are told that it is gone", async () => {
  await fc.assert(fc.asyncProperty(fc.scheduler(), fc.array(fc.constantFrom("take out", "read again"), { minLength: 2, maxLength: 4 }), async (s, all) => {
    const shelf = new MemoryShelf(), first = await openMemoryLedger(shelf).append(newBatch(1));
    const told = await allAtOnce(s, all.map((what, window) => does(inAnyOrder(openMemoryLedger(shelf), s, `window ${window}`), what, first.id, "")));
    const did = told.filter(({ gone }) => !gone);
    expect([did.length, (await openMemoryLedger(shelf).batches()).map(({ id }) => id)]).toEqual([1, did.flatMap(({ id }) => (id === null ? [] : [id]))]);
  }), { numRuns: ORDERS });
});

test("what is written for the real shop stays when a second window puts the demo away that is away already", async () => {
  await fc.assert(fc.asyncProperty(fc.scheduler(), async (s) => {
    const shelf = new MemoryShelf(), demo = await openMemoryLedger(shelf).append({ ...newBatch(1), origin: "demo" });
    await openMemoryLedger(shelf).keepSetting("rates", "over the demo");
    const [one, other] = ["one", "other"].map((name) => inAnyOrder(openMemoryLedger(shelf), s, name)) as [Ledger, Ledger];
    await allAtOnce(s, [
      one.remove(demo.id, { rates: null }).then((was) => (was ? one.keepSetting("rates", "for real") : undefined)),
      other.remove(demo.id, { rates: null }).then((was) => (was ? other.keepSetting("rates", "for real") : undefined)),
    ]);
    expect(await openMemoryLedger(shelf).setting("rates")).toBe("for real");
  }), { numRuns: ORDERS });
});
