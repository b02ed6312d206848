import { expect, test } from "vitest";
import { readHere } from "../../../src/records/read-here.ts";
import { answerReading, readOver } from "../../../src/records/reading/reading-messages.ts";
import type { ReadOptions } from "../../../src/records/reading/read-file.ts";

/** A worker on this thread: what one end posts, the other hears, cloned as between threads. */
function fakeWorker(): Worker {
  const { port1, port2 } = new MessageChannel();
  const end = (port: MessagePort) => ({
    postMessage: (message: unknown, transfer: Transferable[] = []) => port.postMessage(message, transfer),
    addEventListener: (kind: string, listener: EventListener, options?: AddEventListenerOptions) => {
      if (kind !== "message") return;
      port.addEventListener("message", listener, options);
      port.start();
    },
    terminate: () => port.close(),
  });
  answerReading(end(port2) as unknown as DedicatedWorkerGlobalScope, readHere);
  return end(port1) as unknown as Worker;
}

const rows = Array.from({ length: 60_000 }, (_, at) => `R-${at},2026-03-01,A,${at % 7 === 0 ? "lots" : 5}`).join("\n");
const text = `ticket_no,received_on,model,labour_min\n${rows}\n`;
const options = (more: Partial<ReadOptions> = {}): ReadOptions => ({
  file_no: 1, mapping: null, last_day: "2027-06-01", signal: new AbortController().signal, report: () => undefined, take: async () => undefined, ...more,
});

test("a file read in a worker gives what it gives here, one piece after the other", async () => {
  const worker = fakeWorker();
  let expected = 0;
  const here = await readHere({ name: "tickets.csv", blob: new Blob([text]) }, options({ take: async (piece) => void (expected += piece.rows) }));
  let open = 0, most = 0, taken = 0, progress = 0;
  const take: ReadOptions["take"] = async (piece) => {
    most = Math.max(most, (open += 1));
    await new Promise((resolve) => setTimeout(resolve, 20));
    taken += piece.rows;
    open -= 1;
  };
  const done = await readOver(worker, { name: "tickets.csv", blob: new Blob([text]) }, options({ take, report: () => (progress += 1) }));
  worker.terminate();
  expect(done).toEqual(here);
  expect([taken, most, progress > 1]).toEqual([expected, 1, true]);
});

test("a cancel rejects at once with its reason", async () => {
  const worker = fakeWorker(), stop = new AbortController(), why = new Error("enough");
  const done = readOver(worker, { name: "tickets.csv", blob: new Blob([text]) }, options({ signal: stop.signal, report: () => stop.abort(why) }));
  await expect(done).rejects.toBe(why);
  worker.terminate();
});

test("rows that cannot be taken end the reading with what went wrong", async () => {
  const worker = fakeWorker();
  const done = readOver(worker, { name: "tickets.csv", blob: new Blob([text]) }, options({ take: () => Promise.reject(new Error("no room")) }));
  await expect(done).rejects.toThrow("no room");
  worker.terminate();
});

test("a failure inside the worker comes out with its words", async () => {
  const worker = fakeWorker();
  const done = readOver(worker, { name: "tickets.csv", blob: new Blob([text]) }, options({ mapping: { columns: null } as never }));
  await expect(done).rejects.toThrow(TypeError);
  worker.terminate();
});
