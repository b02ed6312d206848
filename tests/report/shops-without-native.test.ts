import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { openNativeEngine } from "../../src/db/open-native.ts";
import { main } from "../../src/report/main.ts";

// As on a machine for which the library's makers have no binary.
vi.mock("@duckdb/node-api", () => { throw new Error("Cannot find module '@duckdb/node-bindings-odd-cpu'"); });

let home: string;
beforeAll(async () => { home = await mkdtemp(join(tmpdir(), "no-native-")); });
afterAll(() => rm(home, { recursive: true, force: true }));

test("where there is no native engine it is null, not an error", async () => {
  expect(await openNativeEngine()).toBeNull();
});

test("many shops are then read with the browser's engine, which is said in the terminal and in the summary", async () => {
  for (const shop of ["Alder Bay", "Birch Head"]) {
    await mkdir(join(home, "in", shop), { recursive: true });
    await writeFile(join(home, "in", shop, "tickets.csv"), "ticket_no,received_on,finished_on,model,reel_kind,came_in,job\n1,2024-03-01,2024-03-02,Whinbeck 40,spinning,planned,full service\n");
    await writeFile(join(home, "in", shop, "findings.csv"), "ticket_no,position,grade,action,qty\n1,ar_clutch,4,replaced,1\n");
  }
  const log = vi.spyOn(console, "log").mockReturnValue(), error = vi.spyOn(console, "error").mockReturnValue();
  expect(await main(["--shops", join(home, "in"), "--out", join(home, "out"), "--pooled-only"])).toBe(0);
  const [out, err] = [log.mock.calls.join("\n"), error.mock.calls.join("\n")];
  log.mockRestore();
  error.mockRestore();
  expect(out).toMatch(/^2 shops with 2 tickets and \d+ inspections .* the browser's engine\.$/);
  expect(err).toMatch(/There is no native DuckDB for this kind of machine/);
  expect(JSON.parse(await readFile(join(home, "out", "summary.json"), "utf8"))).toMatchObject({ engine: expect.stringMatching(/no native one/), counts: { shops: 2, tickets: 2 } });
  expect(await readFile(join(home, "out", "failure-rates.csv"), "utf8")).toMatch(/^ar_clutch,\*,\*,\*,coverage,2,2,/m);
}, 120_000);
