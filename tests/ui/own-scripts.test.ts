import { expect, test } from "vitest";
import { guardScripts, ownWorker } from "../../src/ui/own-scripts.ts";

test("only a script in our own workers' folder, or our service worker, may start as a worker", () => {
  const page = "http://127.0.0.1:4173/";
  expect(ownWorker("http://127.0.0.1:4173/workers/engine.worker-AbCdEf12.js", page)).toBe("http://127.0.0.1:4173/workers/engine.worker-AbCdEf12.js");
  expect(ownWorker("workers/a.js", "http://127.0.0.1:4173/shop/index.html")).toBe("http://127.0.0.1:4173/shop/workers/a.js");
  expect(ownWorker("service-worker.js", page)).toBe("http://127.0.0.1:4173/service-worker.js");
  for (const wrong of [
    "http://127.0.0.1:4174/service-worker.js", "/assets/service-worker.js", "/service-worker.js?x", "/service-worker.mjs",
    "http://127.0.0.1:4174/workers/a.js", "https://example.org/workers/a.js", "/assets/a.js", "/workers/../assets/a.js",
    "blob:http://127.0.0.1:4173/1", "data:text/javascript,1",
  ]) expect(ownWorker(wrong, page)).toBeNull();
});

test("a browser without Trusted Types starts as before", () => {
  expect(() => guardScripts(undefined)).not.toThrow();
});
