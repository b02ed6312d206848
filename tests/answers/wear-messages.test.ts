import { expect, test } from "vitest";
import { answerIn, askWorker } from "../../src/answers/worker-work.ts";
import { workAsked, workHere } from "../../src/answers/wear/wear-messages.ts";
import { ALL_WEAR } from "../../src/answers/wear/wear-records.ts";
import type { WearLine, WearRecords } from "../../src/answers/wear/wear-records.ts";

const line = (low: number, high: number | null, parts: number): WearLine =>
  ({ position: "ar_clutch", low, high, parts, rinse: null, water: null, tier: null, sealed: null, maker: null, model: null, left_out: null, linked: parts, mates: 0 });
const records: WearRecords = {
  filter: ALL_WEAR, places: [], visits: 60, linked_visits: 60, contradicting_months: 0,
  lines: [line(10, null, 20), line(0, 10, 2), line(10, 30, 5), line(40, null, 15), line(40, 60, 9)],
};

/** A worker and its page in one thread, joined by what real ones are: copied messages. */
function joined(): Worker {
  const { port1, port2 } = new MessageChannel();
  port1.start();
  port2.start();
  answerIn(port2 as unknown as DedicatedWorkerGlobalScope, workAsked);
  return Object.assign(port1, { terminate: () => { port1.close(); port2.close(); } }) as unknown as Worker;
}

test("a worker gives what the same work gives here", async () => {
  expect(await askWorker(joined, { kind: "wear", records }, {})).toEqual(await workHere("wear", records, {}));
});

test("a mistake in the worker comes back as an error, and a cancel rejects with its reason", async () => {
  const stop = new AbortController();
  await expect(askWorker(joined, { kind: "wear", records: { ...records, lines: [line(9, 3, 9), line(5, 9, 9)] } }, {})).rejects.toThrow("packLines: high must be above 0 and not below low");
  const going = askWorker(joined, { kind: "wear", records }, { signal: stop.signal });
  stop.abort(new Error("called off"));
  await expect(going).rejects.toThrow("called off");
});
