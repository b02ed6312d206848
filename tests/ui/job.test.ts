import { describe, expect, test } from "vitest";
import { Job } from "../../src/ui/job.svelte.ts";

const untilAborted = (signal: AbortSignal) =>
  new Promise<never>((_, fail) => signal.addEventListener("abort", () => fail(signal.reason as Error)));

describe("Job", () => {
  test("gives the result, with the last progress kept", async () => {
    const job = new Job<number>();
    expect(job.state).toBe("idle");
    const result = await job.run(async (_, report) => {
      report({ step: "counting", done: 1, total: 2 });
      return 7;
    });
    expect([result, job.result, job.state, job.progress?.done]).toEqual([7, 7, "done", 1]);
  });

  test("keeps what went wrong and never rejects", async () => {
    const job = new Job<number>(), fault = new Error("no room");
    expect(await job.run(() => Promise.reject(fault))).toBeNull();
    expect([job.state, job.error]).toEqual(["failed", fault]);
  });

  test("a cancel is no failure and shows nothing", async () => {
    const job = new Job<number>();
    const running = job.run(untilAborted);
    expect(job.state).toBe("running");
    job.cancel();
    expect(await running).toBeNull();
    expect([job.state, job.error]).toEqual(["cancelled", null]);
  });

  test("an error that comes after the cancel but for another reason is a failure", async () => {
    const job = new Job<number>(), fault = new Error("disk");
    const running = job.run(async (signal) => {
      await untilAborted(signal).catch(() => undefined);
      throw fault;
    });
    job.cancel();
    await running;
    expect([job.state, job.error]).toEqual(["failed", fault]);
  });

  test("a new run cancels the one before, whose late words are not heard", async () => {
    const job = new Job<string>();
    let late: () => void = () => undefined;
    const first = job.run(async (signal, report) => {
      late = () => report({ step: "old", done: 9, total: 9 });
      return untilAborted(signal);
    });
    const second = job.run(async () => "new");
    late();
    expect(await first).toBeNull();
    expect(await second).toBe("new");
    expect([job.state, job.result, job.progress]).toEqual(["done", "new", null]);
  });
});
