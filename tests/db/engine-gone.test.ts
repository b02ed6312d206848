import { afterEach, describe, expect, test } from "vitest";
import { Connection, type EngineWorker } from "../../src/db/connection.ts";
import type { Engine } from "../../src/db/engine.ts";
import { engineOverDuckdb } from "../../src/db/engine-over-duckdb.ts";
import { EngineGone, EngineNotStarted } from "../../src/db/errors.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";

const ENDLESS = "select count(*) as n from range(1000000) a(i), range(1000000) b(j) where (i * j) % 7 = 3";

/** A worker whose messages the test answers; `die` ends it as a crash does. */
function fakeWorker(answer: (type: string) => { type: string; data: unknown } | null) {
  let tell: (data: unknown) => void = () => undefined;
  let die: (cause: unknown) => void = () => undefined;
  let ended = 0;
  const worker: EngineWorker = {
    postMessage: (message) => {
      const { messageId, type } = message as { messageId: number; type: string };
      const found = answer(type);
      if (found) queueMicrotask(() => tell({ messageId, requestId: messageId, ...found }));
    },
    onMessage: (listener) => (tell = listener),
    onDeath: (listener) => (die = listener),
    terminate: () => (ended += 1),
  };
  return { worker, die: (cause: unknown) => die(cause), ended: () => ended };
}
const OK: Record<string, { type: string; data: unknown }> = {
  INSTANTIATE: { type: "OK", data: null },
  OPEN: { type: "OK", data: null },
  CONNECT: { type: "CONNECTION_INFO", data: 1 },
  RUN_QUERY: { type: "QUERY_RESULT", data: new Uint8Array() },
};

describe("a real engine", () => {
  let engine: Engine | undefined;
  afterEach(() => engine?.close());

  test("that is closed rejects the running question, the waiting ones and all later ones, and may be closed again", async () => {
    engine = await openNodeEngine();
    const running = engine.rows(ENDLESS), waiting = engine.rows("select 1");
    const rejections = Promise.all([expect(running).rejects.toThrow(EngineGone), expect(waiting).rejects.toThrow(EngineGone)]);
    await engine.close();
    await rejections;
    await expect(engine.rows("select 1")).rejects.toThrow("The engine is closed.");
    await expect(engine.run(["select 1"])).rejects.toThrow(EngineGone);
    await engine.close();
  });
});

describe("a worker", () => {
  test("that gives no sign is an engine that did not start, in words for the owner, and it is ended", async () => {
    const silent = fakeWorker(() => null);
    await expect(engineOverDuckdb(silent.worker, "engine.wasm", 0.05)).rejects.toMatchObject({
      name: "EngineNotStarted", message: expect.stringContaining("reload this page; your records are safe"),
      cause: expect.objectContaining({ message: "It gave no sign for 0.05 seconds." }),
    });
    expect(silent.ended()).toBe(1);
  });

  test("that dies while it starts is an engine that did not start, with what killed it as cause", async () => {
    const { worker, die } = fakeWorker(() => null);
    const opening = engineOverDuckdb(worker, "engine.wasm");
    die(new Error("refused by policy"));
    await expect(opening).rejects.toThrow(EngineNotStarted);
    await expect(opening).rejects.toMatchObject({ cause: { cause: { message: "refused by policy" } } });
  });

  test("that dies later rejects what waits and all that comes, with what killed it as cause", async () => {
    const { worker, die } = fakeWorker((type) => OK[type] ?? null);
    const connection = await Connection.open(worker, "engine.wasm");
    const waiting = connection.pieces("select 1");
    die(new Error("out of memory"));
    await expect(waiting).rejects.toMatchObject({ name: "EngineGone", cause: { message: "out of memory" } });
    await expect(connection.text("select 1")).rejects.toThrow(EngineGone);
  });

  test("whose engine traps is ended: what it holds cannot be trusted any more", async () => {
    const trap = { type: "ERROR", data: { name: "RuntimeError", message: "unreachable" } };
    const { worker, ended } = fakeWorker((type) => (type === "START_PENDING_QUERY" ? trap : OK[type] ?? null));
    const connection = await Connection.open(worker, "engine.wasm");
    await expect(connection.pieces("select 1")).rejects.toThrow(EngineGone);
    expect(ended()).toBe(1);
    await expect(connection.text("select 1")).rejects.toThrow("The calculating part has broken down.");
  });
});
