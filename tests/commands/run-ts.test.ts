import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, describe, expect, test } from "vitest";

const RUN = resolve(import.meta.dirname, "../../src/commands/run-ts.mjs");
const home = mkdtempSync(join(tmpdir(), "saltbench-run-"));
afterAll(() => rmSync(home, { recursive: true }));

/** Runs `text` as an entry; it is killed after 20 s, which shows as a null status. */
function run(text: string, ...argv: string[]) {
  const file = join(home, "entry.ts");
  writeFileSync(join(home, "asks.sql"), "select 42");
  writeFileSync(file, text);
  const { status, stdout, stderr } = spawnSync(process.execPath, [RUN, file, ...argv], { encoding: "utf8", timeout: 20_000, maxBuffer: 1e8 });
  return { status, stdout, errors: stderr.trim().split("\n") };
}

describe("run-ts", () => {
  test("gives main the arguments and leaves with its number", () => {
    const { status, stdout } = run("export const main = async (argv: string[]): Promise<number> => { console.log(argv.join('|')); return 2; };", "--out", "a b");
    expect([status, stdout]).toEqual([2, "--out|a b\n"]);
  });

  test("reads ?raw imports as the bundler does", () => {
    const { status, stdout } = run(`import sql from "./asks.sql?raw"; console.log(sql as string);`);
    expect([status, stdout]).toEqual([0, "select 42\n"]);
  });

  test("does not wait for a timer or a thread that the entry left behind", () => {
    expect(run("export async function main() { setInterval(() => 0, 1000); return 0; }").status).toBe(0);
  });

  test("prints one line, with its cause, for an error that says what is wrong", () => {
    const { status, errors } = run(`export async function main() { throw new Error("nothing to read\\nlong tale", { cause: new Error("no such folder") }); }`);
    expect([status, errors.length]).toEqual([1, 1]);
    expect(errors[0]).toMatch(/entry\.ts: nothing to read \(no such folder\)$/);
  });

  test("shows where a programming mistake happened, in the lines of the source", () => {
    const { status, errors } = run("interface Wide { a: number }\n\nexport async function main() { return (undefined as unknown as Wide).a; }");
    expect(status).toBe(1);
    expect(errors.join("\n")).toMatch(/TypeError: .*\n.*entry\.ts:3:/);
  });

  test("shows what is wrong with an entry that cannot be loaded", () => {
    const { status, errors } = run("export const main = async () => {{ return 0;");
    expect(status).toBe(1);
    expect(errors[0]).toMatch(/entry\.ts: the file cannot be loaded \(.+\)$/);
    expect(errors.join("\n")).toMatch(/entry\.ts:1|1 ?\|/);
  });

  test("fails on a promise that is rejected with nobody waiting", () => {
    const { status, errors } = run(`export async function main() { void Promise.reject(new Error("alone")); await new Promise(() => setInterval(() => 0, 9)); return 0; }`);
    expect([status, errors.length]).toEqual([1, 1]);
  });

  test("fails on a main that gives no number", () => {
    expect(run("export async function main() { return undefined; }").errors[0]).toMatch(/main must give an exit code, gave undefined/);
  });

  test("writes a long output to its end before it leaves", () => {
    expect(run(`export async function main() { process.stdout.write("x".repeat(2_000_000)); return 0; }`).stdout.length).toBe(2_000_000);
  });

  test("leaves with 64 when the file is not there", () => {
    const { status, stderr } = spawnSync(process.execPath, [RUN, "no-such.ts"], { encoding: "utf8" });
    expect([status, stderr]).toEqual([64, "There is no file no-such.ts.\n"]);
  });
});
