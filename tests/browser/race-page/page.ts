import { HAND_GROUPS_SETTING } from "../../../src/answers/interchange/hand-groups.ts";
import { openBrowserLedger } from "../../../src/records/ledger/browser-ledger.ts";
import { SPELLING_SETTING, spellingsFrom } from "../../../src/records/notes/spellings-text.ts";
import { finishTicket } from "../../../src/rooms/bench/finish-ticket.ts";
import { spellings } from "../../../src/rooms/records/spellings.svelte.ts";
import { session } from "../../../src/session.svelte.ts";
import { sentence } from "../../../src/ui/trouble.ts";
import { guardScripts } from "../../../src/ui/own-scripts.ts";
import { browser } from "../../../src/world.ts";

const quiet = () => undefined, going_on = new AbortController().signal;
const csv = (name: string, text: string) => ({ name, blob: new Blob([text]) });
/** One ticket and two findings, the same wherever the number is. */
const files = (ticket_no: string) => [
  csv(`tickets ${ticket_no}.csv`, `ticket_no,received_on,model\n${ticket_no},2026-03-01,Withy 5\n`), csv(`findings ${ticket_no}.csv`, `ticket_no,position\n${ticket_no},rotor\n${ticket_no},handle\n`),
];
const TICKET = { received_on: "2026-11-02", model: "Withy 5", reel_kind: "spinning", job: "full service", finished_on: "2026-11-20", labour_min: "40", outcome: "returned" };
let backup: Blob | null = null;

async function batch(id: string) {
  const found = (await openKept((ledger) => ledger.batches())).find((one) => one.id === id);
  if (!found) throw new RangeError(`batch: needs one that was there, got ${id}`);
  return found;
}

async function openKept<T>(ask: (ledger: Awaited<ReturnType<typeof openBrowserLedger>>) => Promise<T>): Promise<T> {
  const ledger = await openBrowserLedger();
  try {
    return await ask(ledger);
  } finally {
    ledger.close();
  }
}

/** What a window may do in a race; each gives the id of what came of it, or "". */
const DEEDS = {
  async spell(word: string) {
    const fault = await session.consult((_, ledger) => spellings.keep(ledger, word, { ignored: true }));
    if (fault !== null) throw new Error(fault);
    return "";
  },
  async date(text: string) { await session.keepRuleChanges([...session.rule_changes, { from: "2026-11-01", position: null, text }]); return ""; },
  async group(part: string) { await session.keepHandGroups([...session.hand_groups, { kind: "split", part_nos: [part] }]); return ""; },
  async price(price: string) { await session.keepBenchRates({ ...session.bench_rates, hour_price: Number(price) }); return ""; },
  async cost(cost: string) { await session.keepBenchRates({ ...session.bench_rates, hour_cost: Number(cost) }); return ""; },
  async bringIn(ticket_no: string) { return (await session.bringIn(files(ticket_no), going_on, quiet)).id; },
  async takeOut(id: string) { await session.takeOut(known.get(id) ?? await batch(id)); return ""; },
  async readAgain(given: string) {
    const [id = "", ticket_no = ""] = given.split(" "), instead_of = known.get(id) ?? await batch(id);
    return (await session.bringIn(files(ticket_no), going_on, quiet, { answers: [], instead_of })).id;
  },
  async begin(ticket_no: string) { return (await (await session.bench()).begin({ ...TICKET, ticket_no })).id; },
  async finish(id: string) { return (await finishTicket({ store: await session.bench(), id, settled: async () => undefined }, session, going_on, quiet)).id; },
  async writeOn(given: string) {
    const [id = "", note = ""] = given.split(" ");
    await (await session.bench()).write(id, [{ field: "note", value: note, seen: null }]);
    return "";
  },
  async backUp() { backup = await session.backup(); return ""; },
  async restore() { return (await session.restore(backup ?? new Blob(), going_on, quiet)).id; },
  async removeAll() { await session.removeAll(); return ""; },
} satisfies Record<string, (given: string) => Promise<string>>;
/** `after`: milliseconds from the start of the race. */
export type Deed = readonly [name: keyof typeof DEEDS, given: string, after?: number];

/** Imports as they were before a race, so that both windows name one that only one of them can still find. */
const known = new Map<string, Awaited<ReturnType<typeof batch>>>();

/** Does deeds at once when the clock says so. @returns what came of each, or the sentence the owner would read */
async function race(at: number, deeds: readonly Deed[]): Promise<{ id: string | null; told: string | null }[]> {
  await new Promise((resolve) => setTimeout(resolve, Math.max(0, at - Date.now() - 4)));
  while (Date.now() < at);
  const begun = async ([name, given, after = 0]: Deed) => {
    if (after > 0) await new Promise((resolve) => setTimeout(resolve, after));
    return DEEDS[name](given);
  };
  return Promise.all(deeds.map((deed) => begun(deed).then((id) => ({ id, told: null }), (error: unknown) => ({ id: null, told: sentence(error) }))));
}

const COUNTED = `-- Rows of the records.
-- Columns: tickets bigint, numbers bigint, findings bigint, conflicts bigint
select
  (select count(*) from ledger.tickets) as tickets,
  (select count(distinct ticket_no) from ledger.tickets) as numbers,
  (select count(*) from ledger.findings) as findings,
  (select count(*) from conflicts) as conflicts`;

type Counts = Readonly<Record<"tickets" | "numbers" | "findings" | "conflicts", number>>;
const NONE: Counts = { tickets: 0, numbers: 0, findings: 0, conflicts: 0 };

/** What is on the disk, and what this window shows of it. */
async function state() {
  const kept = await openKept(async (ledger) => ({ ids: (await ledger.batches()).map(({ id }) => id), rows: (await ledger.batches()).flatMap(({ tables }) => tables).reduce((sum, { rows }) => sum + rows, 0), settings: await ledger.settings() }));
  const [row] = session.engine ? await session.engine.rows<Counts>(COUNTED) : [], tickets = await (await session.bench()).tickets();
  const counts: Counts = { ...NONE, ...Object.fromEntries(Object.entries(row ?? {}).map(([name, value]) => [name, Number(value)])) };
  return {
    ...kept, words: spellingsFrom(kept.settings[SPELLING_SETTING] ?? null).entries.map(({ spelling }) => spelling).sort(), groups_kept: kept.settings[HAND_GROUPS_SETTING] ?? null,
    bench: tickets.map(({ id, finished_at, batch_id, entries }) => ({ id, finished: finished_at !== null, batch_id, note: entries.get("note")?.value ?? null })),
    shown: {
      ids: session.batches.map(({ id }) => id), counts, trouble: session.trouble, damaged: session.damaged.length, rates: session.bench_rates,
      changes: session.rule_changes.map(({ text }) => text).sort(), groups: session.hand_groups.length,
    },
  };
}

const racing = {
  race, state,
  know: async (id: string) => void known.set(id, await batch(id)),
  notes: async (): Promise<string[]> => (await session.engine?.rows<{ note: string }>("-- Notes.\n-- Columns: note varchar\nselect note from ledger.tickets where note is not null order by note"))?.map(({ note }) => note) ?? [],
  ready: (async () => {
    await openKept((ledger) => ledger.changeSetting("demo", () => "no"));
    await session.start({ ...browser, firstTime: () => false });
    return session.trouble;
  })(),
};
guardScripts();
Object.assign(globalThis, { racing });

declare global {
  var racing: Racing;
}
export type Racing = typeof racing;
