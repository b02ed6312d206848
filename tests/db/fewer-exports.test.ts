import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";
import { engineCode } from "../../src/db/engine-code.ts";
import { namedIn, withFewerExports } from "../../src/db/fewer-exports.ts";

/**
 * `(module (func (export "one") (result i32) i32.const 1) (func (export "two") (result i32) i32.const 2) (global (export "three") i32 (i32.const 3)))`,
 * put together by hand after the binary format of the WebAssembly Core Specification 2.0, chapter 5.
 */
const SMALL = Uint8Array.of(
  0, 0x61, 0x73, 0x6d, 1, 0, 0, 0,
  1, 5, 1, 0x60, 0, 1, 0x7f,
  3, 3, 2, 0, 0,
  6, 6, 1, 0x7f, 0, 0x41, 3, 0x0b,
  7, 21, 3, 3, 0x6f, 0x6e, 0x65, 0, 0, 3, 0x74, 0x77, 0x6f, 0, 1, 5, 0x74, 0x68, 0x72, 0x65, 0x65, 3, 0,
  10, 11, 2, 4, 0, 0x41, 1, 0x0b, 4, 0, 0x41, 2, 0x0b,
);

const exportsOf = async (bytes: Uint8Array<ArrayBuffer>) => (await WebAssembly.instantiate(bytes)).instance.exports as Record<string, () => number>;

test("a module keeps what is needed, with what it does, and loses the rest", async () => {
  expect(Object.keys(await exportsOf(SMALL))).toEqual(["one", "two", "three"]);
  const fewer = await exportsOf(withFewerExports(SMALL, (name) => name === "two"));
  expect(Object.keys(fewer)).toEqual(["two"]);
  expect(fewer.two?.()).toBe(2);
  expect(withFewerExports(SMALL, () => true)).toEqual(SMALL);
});

test("other bytes and half a module are refused", () => {
  expect(() => withFewerExports(new TextEncoder().encode("no module at all"), () => true)).toThrow("withFewerExports: needs a WebAssembly module, got other bytes");
  expect(() => withFewerExports(SMALL.slice(0, 9), () => true)).toThrow("withFewerExports: needs a whole WebAssembly module");
});

test("the engine's code exports every name its scripts ask of it, and little more", async () => {
  const whole = createRequire(import.meta.url).resolve("@duckdb/duckdb-wasm/dist/duckdb-eh.wasm");
  const names = async (path: string) => new Set(WebAssembly.Module.exports(await WebAssembly.compile(readFileSync(path))).map(({ name }) => name));
  const packaged = await names(whole), ours = await names(engineCode());
  for (const script of ["duckdb-browser-eh.worker.js", "duckdb-node-eh.worker.cjs"]) {
    const text = readFileSync(join(dirname(whole), script), "utf8");
    const isNamed = namedIn(text), asked = [...text.matchAll(/wasmExports\.(\w+)/g)].map((match) => match[1] ?? "");
    expect(new Set(asked).size).toBeGreaterThan(50);
    expect(asked.filter((name) => !ours.has(name)), script).toEqual([]);
    expect([...packaged].filter((name) => isNamed(name) && !ours.has(name)), script).toEqual([]);
  }
  expect([packaged.size > 70_000, ours.size < 400]).toEqual([true, true]);
});
