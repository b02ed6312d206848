import fc from "fast-check";
import { expect, test } from "vitest";
import type { BenchStore } from "../../src/records/bench-log/bench-store.ts";
import { MemoryBenchShelf, openMemoryBench } from "../../src/records/bench-log/memory-bench.ts";
import type { NamedFile } from "../../src/records/formats/sheet.ts";
import type { Imported } from "../../src/records/importing.ts";
import type { Ledger } from "../../src/records/ledger/ledger.ts";
import { MemoryShelf, openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import type { Settlement } from "../../src/records/looking/remembered.ts";
import { finishTicket } from "../../src/rooms/bench/finish-ticket.ts";
import { newBatch } from "../records/ledger/contract.ts";
import { allAtOnce, inAnyOrder, ORDERS } from "./any-order.ts";

const WHOLE = { ticket_no: "R-1", received_on: "2026-11-02", model: "Withy 5", reel_kind: "spinning", job: "full service", finished_on: "2026-11-20", labour_min: "40", outcome: "returned" };

/** Imports as the real ones do: rows that are there already are known, another import of the ticket is replaced in one step. */
const records = (ledger: Ledger) => ({
  day: "2026-11-30",
  consult: <T>(ask: (engine: never, kept: Ledger) => Promise<T>) => ask(undefined as never, ledger),
  bringIn: async ([file]: readonly NamedFile[], _signal: AbortSignal, _report: unknown, { instead_of }: Settlement): Promise<Imported> => {
    const text = (await file?.blob.text()) ?? "", tally = { ...newBatch(1).files[0], file: file?.name ?? "", sha256: text };
    const batch = { ...newBatch(1), origin: "bench" as const, rejects: [], files: [tally] } as unknown as ReturnType<typeof newBatch>;
    return ledger.alone(async () => {
      const known = (await ledger.batches()).some(({ id, files }) => id !== instead_of?.id && files[0]?.sha256 === text);
      if (known && !instead_of) return { ...batch, id: "", kept: false } as unknown as Imported;
      return { ...(await ledger.append(batch, instead_of?.id)), kept: true, rejects: [] };
    });
  },
});

const signal = new AbortController().signal, quiet = () => undefined;
const finish = (store: BenchStore, id: string, ledger: Ledger) => finishTicket({ store, id, settled: async () => undefined }, records(ledger) as unknown as Parameters<typeof finishTicket>[1], signal, quiet)
  .then(() => "finished", (error: unknown) => (error as Error).name === "TicketClosed" ? (error as Error).message : Promise.reject(error));

/** Two or three windows finish one ticket at once, while others write on it or throw it away. */
const others = fc.array(fc.constantFrom("write", "throw away"), { maxLength: 2 });

test("of windows that finish one ticket at once one does, its rows are in the records once with all that was written, and the others are told", async () => {
  const seen = { finished: 0, meanwhile: 0, thrown: 0 };
  await fc.assert(fc.asyncProperty(fc.scheduler(), fc.integer({ min: 2, max: 3 }), others, async (s, count, beside) => {
    const shelf = new MemoryShelf(), bench_shelf = new MemoryBenchShelf(), bench = openMemoryBench(bench_shelf), { id } = await bench.begin(WHOLE);
    const window = (name: string) => ({ store: inAnyOrder(openMemoryBench(bench_shelf), s, name), ledger: inAnyOrder(openMemoryLedger(shelf), s, name) });
    const finishing = Array.from({ length: count }, (_, at) => window(`window ${at}`)).map(({ store, ledger }) => finish(store, id, ledger));
    const doing = beside.map(async (what, at) => {
      const { store } = window(`beside ${at}`);
      if (what === "throw away") return store.remove(id).then(() => what);
      return store.write(id, [{ field: "note", value: `note ${at}`, seen: null }]).then(() => what, (error: unknown) => ((error as Error).name === "TicketClosed" ? "too late" : Promise.reject(error)));
    });
    const told = (await allAtOnce(s, [...finishing, ...doing])).slice(0, count), done = told.filter((one) => one === "finished").length;
    const ticket = await bench.ticket(id), imports = await openMemoryLedger(shelf).batches(), holds = (text: string) => imports.some(({ files }) => files[0]?.sha256.includes(text));
    expect(imports.length).toBeLessThanOrEqual(1);
    expect(told.every((one) => one === "finished" || /another window|in another window/i.test(one))).toBe(true);
    if (ticket?.finished_at) expect([done, imports[0]?.id]).toEqual([1, ticket.batch_id]);
    const note = ticket?.entries.get("note")?.value;
    if (ticket?.finished_at && note) expect(holds(note)).toBe(true);
    if (ticket && !ticket.finished_at) expect([done, imports[0]?.id ?? null]).toEqual([0, ticket.batch_id]);
    if (beside.length === 0) expect(done).toBe(1);
    seen.finished += done;
    seen.meanwhile += Number(told.some((one) => one.includes("wrote on this ticket")));
    seen.thrown += Number(told.some((one) => one.includes("thrown away")));
  }), { numRuns: ORDERS });
  expect([seen.finished > ORDERS / 3, seen.meanwhile > 0, seen.thrown > 0]).toEqual([true, true, true]);
});
