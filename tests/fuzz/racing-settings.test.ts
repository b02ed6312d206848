import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Ledger } from "../../src/records/ledger/ledger.ts";
import { MemoryShelf, openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { decideNames, decideTicket, forgetName, nameDecisions, ticketDecisions } from "../../src/records/merging/decisions.ts";
import { keepOpenWords } from "../../src/records/notes/keep-open-words.ts";
import { OPEN_WORDS_SETTING, readOpenWords } from "../../src/records/notes/open-words.ts";
import { SPELLING_SETTING, spellingsFrom } from "../../src/records/notes/spellings-text.ts";
import { saltOf } from "../../src/records/owner-tags.ts";
import { Spellings } from "../../src/rooms/records/spellings.svelte.ts";
import { ShopWords } from "../../src/shop-words.svelte.ts";
import { newBatch } from "../records/ledger/contract.ts";
import { allAtOnce, inAnyOrder, ORDERS, withoutTransaction } from "./any-order.ts";

/** Each window's own steps, by the number of what it adds; true takes what it added last out again. */
const windows = fc.array(fc.array(fc.boolean(), { minLength: 1, maxLength: 4 }), { minLength: 2, maxLength: 4 });
/** What one window leaves of its own: each step adds one, or takes the last one out again. */
function leaves(steps: readonly boolean[], window: number): string[] {
  const own: string[] = [];
  steps.forEach((out, at) => void (out && own.length > 0 ? own.pop() : own.push(`w${window} s${at}`)));
  return own.sort();
}

interface Writing { add(name: string): Promise<unknown>; takeOut(name: string): Promise<unknown> }

async function steps(taken: readonly boolean[], window: number, { add, takeOut }: Writing): Promise<void> {
  const own: string[] = [];
  for (const [at, out] of taken.entries()) {
    const last = out ? own.pop() : undefined, name = `w${window} s${at}`;
    if (last === undefined) own.push(name);
    await (last === undefined ? add(name) : takeOut(last));
  }
}

type Way = (ledger: Ledger) => Writing;

/** Lets all windows write at once, in any order of their steps, and gives what stands there at last beside what should. */
async function raced(s: fc.Scheduler, all: readonly (readonly boolean[])[], way: Way, there: (ledger: Ledger) => Promise<readonly string[]>, seen: (ledger: Ledger) => Ledger = (ledger) => ledger) {
  const shelf = new MemoryShelf();
  await allAtOnce(s, all.map((own, window) => steps(own, window, way(seen(inAnyOrder(openMemoryLedger(shelf), s, `window ${window}`))))));
  return { found: [...(await there(openMemoryLedger(shelf)))].sort(), wanted: all.flatMap(leaves).sort() };
}

const spelled: Way = (ledger) => {
  const book = new Spellings();
  return { add: (spelling) => book.keep(ledger, spelling, { ignored: true }), takeOut: (spelling) => book.drop(ledger, { spelling, reel_kind: null, ignored: true }) };
};
const spellings = async (ledger: Ledger) => spellingsFrom(await ledger.setting(SPELLING_SETTING)).entries.map(({ spelling }) => spelling);
const named: Way = (ledger) => ({
  add: (model) => decideNames(ledger, [{ from: { maker: null, model }, to: null, decided_on: "2026-11-30" }]), takeOut: (model) => forgetName(ledger, { maker: null, model }),
});

class Window extends ShopWords {
  constructor(protected readonly kept: Ledger) { super(); }
  look() { return this.recallWords(false); }
}
const marked: Way = (ledger) => {
  const window = new Window(ledger), of = (part_no: string) => ({ part_no, supplier: null, qty: 1, ordered_on: "2026-11-30", arrived_on: null, seen: { on_hand: null, on_order: null } });
  return { add: (name) => window.keepOrderMarks([...window.order_marks, of(name)]), takeOut: (name) => window.keepOrderMarks(window.order_marks.filter(({ part_no }) => part_no !== name)) };
};
/** Adds by what stands there and goes back by what was done, as the room's Undo does; another window may have been looked at between. */
const dated: Way = (ledger) => {
  const window = new Window(ledger), back = new Map<string, () => Promise<void>>();
  return {
    async add(text) {
      const before = window.rule_changes, after = [...before, { from: "2026-11-30", position: null, text: ` ${text}` }];
      await window.keepRuleChanges(after);
      back.set(text, () => window.keepRuleChanges(before, after));
      await window.look();
    },
    takeOut: (text) => back.get(text)?.() ?? Promise.resolve(),
  };
};
const marks = async (ledger: Ledger) => { const window = new Window(ledger); await window.look(); return window.order_marks.map(({ part_no }) => part_no); };
const changes = async (ledger: Ledger) => { const window = new Window(ledger); await window.look(); return window.rule_changes.map(({ text }) => text); };

describe("however the steps of two to four windows fall between each other", () => {
  test.each([
    ["the spelling book", spelled, spellings], ["the names decided", named, async (ledger: Ledger) => (await nameDecisions(ledger)).map(({ from }) => from.model)],
    ["the orders marked", marked, marks], ["the changes of habit, with Undo", dated, changes],
  ] as const)("%s: all that was added is in once, and what was taken out is not", async (_name, way, there) => {
    await fc.assert(fc.asyncProperty(fc.scheduler(), windows, async (s, all) => {
      const { found, wanted } = await raced(s, all, way, there);
      expect(found).toEqual(wanted);
    }), { numRuns: ORDERS });
  });

  test("answers are lost where reading and writing are two steps, so that these tests can fail", async () => {
    let lost = 0;
    await fc.assert(fc.asyncProperty(fc.scheduler(), windows, async (s, all) => {
      const { found, wanted } = await raced(s, all, spelled, spellings, withoutTransaction);
      lost += Number(found.length < wanted.length);
    }), { numRuns: 50 });
    expect(lost).toBeGreaterThan(5);
  });

  test("two windows that settle one word, or one ticket number, leave the answer of one of them, once", async () => {
    await fc.assert(fc.asyncProperty(fc.scheduler(), async (s) => {
      const shelf = new MemoryShelf(), verdicts = ["counts", "two jobs"] as const;
      await allAtOnce(s, verdicts.map(async (verdict, window) => {
        const ledger = inAnyOrder(openMemoryLedger(shelf), s, `window ${window}`);
        await new Spellings().keep(ledger, "brg", { ignored: true });
        await decideTicket(ledger, { ticket_no: "R-1", verdict, row_key: "k", others: [], decided_on: "2026-11-30" });
      }));
      const ledger = openMemoryLedger(shelf), tickets = await ticketDecisions(ledger);
      expect([(await spellings(ledger)).length, tickets.length, verdicts.includes(tickets[0]?.verdict as "counts")]).toEqual([1, 1, true]);
    }), { numRuns: ORDERS });
  });

  test("values by name that two windows change at once all stand, and both windows show them once they have looked", async () => {
    await fc.assert(fc.asyncProperty(fc.scheduler(), async (s) => {
      const shelf = new MemoryShelf(), [one, other] = ["one", "other"].map((name) => new Window(inAnyOrder(openMemoryLedger(shelf), s, name))) as [Window, Window];
      await allAtOnce(s, [
        one.keepBenchRates({ ...one.bench_rates, hour_price: 60 }).then(() => one.keepServiceLevels({ ...one.service_levels, A: 0.99 })).then(() => one.keepFreeFrom("Tarn", 80)),
        other.keepBenchRates({ ...other.bench_rates, hour_cost: 30 }).then(() => other.keepServiceLevels({ ...other.service_levels, C: 0.7 })).then(() => other.keepFreeFrom("Ebb", 90)),
      ]);
      for (const window of [one, other]) {
        await s.waitFor(window.look());
        expect([window.bench_rates, window.service_levels, { ...window.free_from }]).toEqual([{ hour_price: 60, hour_cost: 30, beside_min: null }, { A: 0.99, B: 0.9, C: 0.7 }, { Tarn: 80, Ebb: 90 }]);
      }
    }), { numRuns: ORDERS });
  });

  test("two windows that first ask for tags of owners get one salt, which is the one kept", async () => {
    await fc.assert(fc.asyncProperty(fc.scheduler(), async (s) => {
      const shelf = new MemoryShelf(), salts = await allAtOnce(s, [1, 2, 3].map((window) => saltOf(inAnyOrder(openMemoryLedger(shelf), s, `window ${window}`))));
      expect(new Set([...salts, await openMemoryLedger(shelf).setting("owner salt")]).size).toBe(1);
    }), { numRuns: ORDERS });
  });

  test("words open in notes are those of the imports that are there, whichever window brought them in or took others out", async () => {
    await fc.assert(fc.asyncProperty(fc.scheduler(), fc.integer({ min: 2, max: 4 }), async (s, count) => {
      const shelf = new MemoryShelf(), first = await openMemoryLedger(shelf).append(newBatch(1));
      await keepOpenWords(openMemoryLedger(shelf), { batch: first.id, words: ["old"], readings: [] });
      await allAtOnce(s, Array.from({ length: count }, async (_, window) => {
        const ledger = inAnyOrder(openMemoryLedger(shelf), s, `window ${window}`);
        if (window === 0) return void (await ledger.remove(first.id), await keepOpenWords(ledger, null));
        const { id } = await ledger.append(newBatch(window + 1));
        await keepOpenWords(ledger, { batch: id, words: [`word ${window}`], readings: [] });
      }));
      const { open } = readOpenWords(await openMemoryLedger(shelf).setting(OPEN_WORDS_SETTING));
      expect(open.flatMap(({ words }) => words).sort()).toEqual(Array.from({ length: count - 1 }, (_, at) => `word ${at + 1}`));
    }), { numRuns: Math.ceil(ORDERS / 3) });
  });
});

