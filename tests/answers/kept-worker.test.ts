import { describe, expect, test } from "vitest";
import { keepIn } from "../../src/answers/kept-desk.ts";
import type { KeptWork } from "../../src/answers/kept-desk.ts";
import { KeptWorker } from "../../src/answers/kept-worker.ts";

type Asked = { readonly name: string; readonly slow?: boolean };
const bytes = (...values: number[]) => Uint8Array.from(values);

/** A worker in this thread that adds up the bytes it keeps under a name, joined to its page by what real ones are: copied messages. */
function desk() {
  const told: string[] = [], ended: string[] = [];
  const work: KeptWork<Asked, number, number> = {
    unpack: (name, stream) => {
      told.push(`unpacked ${name}`);
      return stream.reduce((sum, one) => sum + one, 0);
    },
    work: async ({ name, slow }, kept, { signal, report }) => {
      const found = kept(name);
      report?.({ step: `Adding up ${name}`, done: 0, total: 1 });
      for (let turn = 0; slow && turn < 200; turn += 1) {
        await new Promise((done) => { setTimeout(done, 5); });
        if (signal?.aborted) told.push(`stopped ${name}`);
        signal?.throwIfAborted();
      }
      told.push(`answered ${name}`);
      return found;
    },
  };
  const started = () => {
    const { port1, port2 } = new MessageChannel();
    port1.start();
    port2.start();
    keepIn(port2 as unknown as DedicatedWorkerGlobalScope, work);
    return Object.assign(port1, { terminate: () => { ended.push("ended"); port1.close(); port2.close(); } }) as unknown as Worker;
  };
  return { told, ended, kept: new KeptWorker<Asked>(started) };
}

describe("KeptWorker", () => {
  test("asks for records once however many wait for them, and answers from what is kept, the same question once", async () => {
    const { kept, told } = desk();
    let asked = 0;
    const records = async () => { asked += 1; return bytes(1, 2, 3); };
    await Promise.all([kept.hold("a", records), kept.hold("a", records)]);
    await kept.hold("a", records);
    expect([await kept.ask<number>({ name: "a" }, {}, 0), await kept.ask<number>({ name: "a" }, {}, 0), asked]).toEqual([6, 6, 1]);
    expect(told).toEqual(["unpacked a", "answered a"]);
    kept.inState("over");
  });

  test("a question asked again is answered from the last sixteen answers; an older one is worked out anew", async () => {
    const { kept, told } = desk(), names = Array.from({ length: 17 }, (_, at) => `n${at}`);
    for (const name of names) await kept.hold(name, async () => bytes(1));
    for (const name of [...names, "n16", "n1", "n0"]) await kept.ask({ name }, {}, 0);
    // n0 is the seventeenth from the end when it is asked for again; n16 and n1 are not.
    expect(told.filter((one) => one.startsWith("answered"))).toEqual([...names, "n0"].map((name) => `answered ${name}`));
    kept.inState("over");
  });

  test("of questions asked together the one with the lowest turn is answered first", async () => {
    const { kept, told } = desk();
    for (const name of ["late", "soon", "first"]) await kept.hold(name, async () => bytes(1));
    await Promise.all([kept.ask({ name: "late" }, {}, 2), kept.ask({ name: "soon" }, {}, 1), kept.ask({ name: "first" }, {}, 0)]);
    expect(told.filter((one) => one.startsWith("answered"))).toEqual(["answered first", "answered soon", "answered late"]);
    kept.inState("over");
  });

  test("a cancel rejects at once with its reason, stops the work, and the next question is answered", async () => {
    const { kept, told } = desk(), stop = new AbortController(), steps: string[] = [];
    await kept.hold("a", async () => bytes(4));
    const going = kept.ask({ name: "a", slow: true }, { signal: stop.signal, report: ({ step }) => { steps.push(step); stop.abort(new Error("called off")); } }, 0);
    await expect(going).rejects.toThrow("called off");
    expect(steps).toEqual(["Adding up a"]);
    expect(await kept.ask<number>({ name: "a" }, {}, 0)).toBe(4);
    expect(told).toEqual(["unpacked a", "stopped a", "answered a"]);
    kept.inState("over");
  });

  test("records still on their way are called off when the last who waits for them no longer does, and asked for anew by the next", async () => {
    const { kept } = desk(), one = new AbortController(), other = new AbortController(), stopped: unknown[] = [];
    const endless = (signal: AbortSignal) => new Promise<Uint8Array>((_, reject) => { signal.addEventListener("abort", () => { stopped.push(signal.reason); reject(signal.reason); }); });
    const waits = [kept.hold("a", endless, one.signal), kept.hold("a", endless, other.signal)].map((wait) => wait.catch((error: unknown) => error));
    one.abort("first gone");
    expect(await waits[0]).toBe("first gone");
    expect(stopped).toEqual([]);
    other.abort("both gone");
    expect(await waits[1]).toBe("both gone");
    expect(stopped).toEqual(["both gone"]);
    await kept.hold("a", async () => bytes(9));
    expect(await kept.ask<number>({ name: "a" }, {}, 0)).toBe(9);
    kept.inState("over");
  });

  test("records that have changed end the worker: who waits is told, nothing kept is answered from", async () => {
    const { kept, ended } = desk();
    await kept.inState("engine", 1).hold("a", async () => bytes(1));
    const waiting = kept.ask({ name: "a", slow: true }, {}, 0);
    kept.inState("engine", 2);
    await expect(waiting).rejects.toThrow("The records have changed meanwhile.");
    expect(ended).toEqual(["ended"]);
    await kept.inState("engine", 2).hold("a", async () => bytes(7));
    expect(await kept.ask<number>({ name: "a" }, {}, 0)).toBe(7);
    kept.inState("over");
  });

  test("a question about what is not kept, and records that cannot be had, come back as errors", async () => {
    const { kept } = desk();
    await expect(kept.ask({ name: "never held" }, {}, 0)).rejects.toThrow("KeptDesk: needs never held before it is asked for");
    await expect(kept.hold("a", async () => { throw new Error("the engine is gone"); })).rejects.toThrow("the engine is gone");
    await kept.hold("a", async () => bytes(2));
    expect(await kept.ask<number>({ name: "a" }, {}, 0)).toBe(2);
    kept.inState("over");
  });
});
