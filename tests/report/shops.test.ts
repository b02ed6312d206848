import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parquetWriteBuffer } from "hyparquet-writer";
import Papa from "papaparse";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { rollUpRows } from "../../src/answers/elsewhere/roll-up.ts";
import { main } from "../../src/report/main.ts";

const HEAD = "ticket_no,received_on,finished_on,maker,model,reel_kind,serial,came_in,job,batch,technician";
/** Both shops number from 1, and both know a reel S1 whose clutch fails: at Alder Bay in March, at Birch Head in April. */
const ALDER = { "tickets.csv": `${HEAD}
1,2024-03-01,2024-03-02,Brackhelm,Whinbeck 40,spinning,S1,planned,full service,club,AB
2,2024-09-08,2024-09-09,Brackhelm,Whinbeck 40,spinning,S2,planned,full service,club,AB
`, "findings.csv": "ticket_no,position,grade,action,qty\n1,ar_clutch,4,replaced,1\n2,ar_clutch,0,cleaned,\n2,main_gear,0,cleaned,\n" };
const BIRCH_TICKETS = `${HEAD}
1,2024-04-01,2024-04-02,Brackhelm,Whinbeck 40,spinning,S1,planned,full service,club,AB
2,2024-10-01,2024-10-02,Brackhelm,Dovekin 25,spinning,S9,planned,full service,,AB
3,2024-11-01,2024-10-02,Brackhelm,Dovekin 25,spinning,S9,planned,full service,,AB
`;
const BIRCH_FINDINGS = "ticket_no,position,grade,action,qty\n1,ar_clutch,4,replaced,1\n2,ar_clutch,1,cleaned,\n";
const PICTURE = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]);

function parquet(csv: string): Uint8Array {
  const { data, meta } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });
  return new Uint8Array(parquetWriteBuffer({ columnData: (meta.fields ?? []).map((name) => ({ name, data: data.map((row) => row[name] || null), type: "STRING" as const })) }));
}

let home: string;
beforeAll(async () => { home = await mkdtemp(join(tmpdir(), "shops-")); });
afterAll(() => rm(home, { recursive: true, force: true }));

async function put(path: string, files: Record<string, string | Uint8Array>): Promise<string> {
  await mkdir(path, { recursive: true });
  for (const [name, content] of Object.entries(files)) await writeFile(join(path, name), content);
  return path;
}
async function run(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  const log = vi.spyOn(console, "log").mockReturnValue(), error = vi.spyOn(console, "error").mockReturnValue();
  try {
    const code = await main(argv);
    return { code, out: log.mock.calls.join("\n"), err: error.mock.calls.join("\n") };
  } finally {
    log.mockRestore();
    error.mockRestore();
  }
}
type Line = Record<string, string>;
const lines = async (...path: string[]): Promise<Line[]> =>
  Papa.parse<Line>(await readFile(join(home, ...path), "utf8"), { header: true, skipEmptyLines: true }).data;

describe("the report on many shops", () => {
  let ran: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    await put(join(home, "in", "Alder Bay"), ALDER);
    await put(join(home, "in", "shop=Birch%20Head"), { "tickets.parquet": parquet(BIRCH_TICKETS), "findings.parquet": parquet(BIRCH_FINDINGS) });
    await put(join(home, "in", "Cedar Sound"), { "tickets.csv": ALDER["tickets.csv"], "findings.csv": PICTURE });
    await put(join(home, "in", "Elder Reach"), { "notes.md": "nothing here" });
    ran = await run("--shops", join(home, "in"), "--out", join(home, "out"), "--threads=1", "--memory", "500MB");
  }, 120_000);

  test("exits 0, says what it read, and leaves nothing else behind", async () => {
    expect([ran.code, ran.out]).toEqual([0, expect.stringMatching(/^3 shops with 6 tickets and \d+ inspections in .*out; 1 cell to fix; native DuckDB\.$/)]);
    expect(await readdir(join(home, "out"))).toEqual(
      ["comebacks.csv", "demand-shops.csv", "demand.csv", "failure-rates.csv", "labour.csv", "lots.csv", "rejected.csv", "roll-up.arrow", "shops", "shops.csv", "summary.json", "verdicts.csv", "wear.csv"]);
    expect((await readdir(home)).sort()).toEqual(["in", "out"]);
  });

  test("lists the shops with what each brought, and why a table or a shop could not be read", async () => {
    const shops = await lines("out", "shops.csv");
    expect(shops.map(({ shop, tickets, rows_to_fix }) => [shop, tickets, rows_to_fix])).toEqual([["Alder Bay", "2", "0"], ["Birch Head", "2", "1"], ["Cedar Sound", "2", "0"], ["Elder Reach", "0", "0"]]);
    expect(shops[2]?.["note"]).toMatch(/^findings\.csv: This is a picture/);
    expect(shops[3]?.["note"]).toMatch(/^Nothing to read/);
  });

  test("names the shop of a row that did not pass, from Parquet too", async () => {
    expect(await lines("out", "rejected.csv")).toEqual([expect.objectContaining({ shop: "Birch Head", file: "tickets.parquet", column: "finished_on", value: "2024-10-02" })]);
  });

  test("pools exactly the sum of what the shops count themselves", async () => {
    const key = (row: Line) => [row["position"], row["maker"], row["model"], row["came_in"], row["denominator"]].join("|"), sums = new Map<string, number[]>();
    for (const shop of ["Alder Bay", "Birch Head", "Cedar Sound"]) {
      for (const row of await lines("out", "shops", shop, "failure-rates.csv")) {
        const sum = sums.get(key(row)) ?? [0, 0];
        sums.set(key(row), [(sum[0] ?? 0) + Number(row["inspected"]), (sum[1] ?? 0) + Number(row["failed"])]);
      }
    }
    const pooled = await lines("out", "failure-rates.csv");
    expect(sums.size).toBe(20);
    expect(new Map(pooled.map((row) => [key(row), [Number(row["inspected"]), Number(row["failed"])]]))).toEqual(sums);
  });

  test("takes no reel of one shop for another's: S1 failed in both and came back to neither", async () => {
    const back = (await lines("out", "comebacks.csv")).filter(({ position, model }) => position === "ar_clutch" && model === "*");
    expect(back).toEqual([expect.objectContaining({ back: "0", failures: "2" })]);
    const wear = (await lines("out", "wear.csv")).filter(({ position, clock }) => position === "ar_clutch" && clock === "months");
    expect(wear.every(({ method }) => method === "current status")).toBe(true);
  });

  test("writes each shop the report it gets alone", async () => {
    await run(join(home, "in", "Alder Bay"), "--out", join(home, "out", "alone"));
    for (const name of (await readdir(join(home, "out", "alone"))).filter((one) => one.endsWith(".csv"))) {
      const rounded = (rows: Line[]) => rows.map((row) => Object.values(row).map((cell) => (/^-?\d+\.\d+$/.test(cell) ? Number(cell).toPrecision(9) : cell)));
      expect([name, rounded(await lines("out", "shops", "Alder Bay", name))]).toEqual([name, rounded(await lines("out", "alone", name))]);
    }
    await rm(join(home, "out", "alone"), { recursive: true });
  }, 120_000);

  test("writes a roll-up with the same sums and no name of a shop, ticket or reel", async () => {
    const file = await readFile(join(home, "out", "roll-up.arrow")), rows = await rollUpRows(new Uint8Array(file)), clutch = rows.filter(({ position }) => position === "ar_clutch");
    expect([clutch.reduce((sum, row) => sum + row.failed, 0), new Set(clutch.map(({ shop }) => shop)).size]).toEqual([2, 2]);
    expect(file.toString("latin1")).not.toMatch(/Alder Bay|Birch Head|S1|club/);
  });
});

describe("the report on many shops refuses with one line", () => {
  test("folders that mean the same shop, an empty folder, a file, and what the engine cannot be given", async () => {
    const twice = join(home, "twice");
    await put(join(twice, "shop=Alder"), ALDER);
    await put(join(twice, "alder"), ALDER);
    const refused = async (...argv: string[]) => {
      const { code, err } = await run(...argv, "--out", join(home, "none"));
      expect([code, (await readdir(home)).includes("none")]).toEqual([2, false]);
      return err;
    };
    expect(await refused("--shops", twice)).toMatch(/mean the shop alder|mean the shop Alder/i);
    expect(await refused("--shops", await put(join(home, "empty"), {}))).toMatch(/^Nothing to read in .*: it needs a folder for each shop\.$/);
    expect(await refused("--shops", join(twice, "alder", "tickets.csv"))).toMatch(/^--shops needs a folder/);
    expect(await refused("--shops", twice, "--threads", "many")).toMatch(/^--threads needs/);
    expect(await refused("--shops", twice, "--memory", "4")).toMatch(/^--memory needs/);
    expect(await refused(twice, "--pooled-only")).toMatch(/go with --shops/);
    expect(await refused(twice, "--shops", twice)).toMatch(/^One folder only/);
  });
});
