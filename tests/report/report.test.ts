import { mkdtemp, mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import Papa from "papaparse";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { main } from "../../src/report/main.ts";

/** The columns the report promises (RECORDS.md, headless contract); more may follow, `note` last. */
const PROMISED: Record<string, string> = {
  "rejected.csv": "file, line, column, value, reason",
  "failure-rates.csv": "position, maker, model, came_in, denominator, inspected, failed, rate, rate_low, rate_high, pooled_rate, pooled_low, pooled_high, adjusted_ratio, adjusted_low, adjusted_high, p_value, q_value, verdict",
  "verdicts.csv": "position, maker, model, name, series, verdict, decided_on",
  "wear.csv": "position, clock, group, method, n, failed, shape, shape_se, scale, scale_low, scale_high, b10, b10_low, b10_high, log_likelihood",
  "wear-effects.csv": "position, term, coefficient, se, time_ratio, time_ratio_low, time_ratio_high",
  "wear-curve.csv": "position, exposure, fitted, fitted_low, fitted_high, observed, n",
  "recurrences.csv": "position, maker, model, age, at_risk, mean_cumulative, low, high",
  "comebacks.csv": "position, maker, model, position_name, failures, back, share",
  "lots.csv": "size_or_part, supplier, from, to, fitted, failed_early, share, expected_share, p_value, verdict",
  "restock.csv": "part_no, interchange, supplier, on_hand, on_order, demand_mean, demand_p95, reorder_point, order_up_to, order_qty, cost, reason",
  "stock-curve.csv": "spend, jobs_without_wait, lines_filled",
  "advice-score.csv": "policy, jobs_without_wait, stock_value_mean, orders, spend",
  "workload.csv": "week, tickets, tickets_p10, tickets_p90, bench_hours, bench_hours_p10, bench_hours_p90, method",
  "forecast-score.csv": "method, horizon_weeks, mase, pinball, coverage80",
  "labour.csv": "job, reel_kind, maker, model, n, median, mean, mean_low, mean_high, p80, pooled_median, pooled_p80",
};

const TICKETS = `ticket_no,received_on,finished_on,maker,model,reel_kind,came_in,job,labour_min
T1,2024-03-01,2024-03-04,Brackhelm,Whinbeck 40,spinning,planned,full service,60
T2,2024-03-08,2024-03-12,Brackhelm,Whinbeck 40,spinning,complaint,full service,70
T3,2024-03-09,2024-03-02,Brackhelm,Dovekin 25,spinning,planned,full service,80
T4,2024-03-15,2024-03-16,Brackhelm,Dovekin 25,spinning,planned,line roller,20
`;
const FINDINGS = `ticket_no,position,part_no,grade,action,qty
T1,ar_clutch,,1,cleaned,
T2,ar_clutch,=SUM(A1),4,replaced,1
T4,line_roller_bearing,B-1,3,replaced,2
`;
const PARTS = `part_no,name,family,size,supplier,unit_cost,pack_qty,on_hand
B-1,7x11x3 2RS,ball bearing,7x11x3,Aldersund Bearings,2.4,5,0
`;

let home: string;
beforeAll(async () => { home = await mkdtemp(join(tmpdir(), "report-")); });
afterAll(() => rm(home, { recursive: true, force: true }));

/** Runs the command and gives its exit code with what it wrote to the terminal. */
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

async function folder(name: string, files: Record<string, string | Uint8Array>): Promise<string> {
  const path = join(home, name);
  await mkdir(path);
  for (const [file, text] of Object.entries(files)) await writeFile(join(path, file), text);
  return path;
}

const rows = async (out: string, file: string) =>
  Papa.parse<Record<string, string>>(await readFile(join(out, file), "utf8"), { header: true, skipEmptyLines: true });

describe("npm run report", () => {
  let out: string, first: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    out = join(home, "out", "deep");
    first = await run(await folder("shop", { "tickets.csv": TICKETS, "Findings.csv": FINDINGS, "parts.csv.gz": gzipSync(PARTS), "notes.txt": "a note" }), "--out", out);
  });

  test("exits 0, says what it wrote, and leaves nothing else behind", async () => {
    expect([first.code, first.err]).toEqual([0, ""]);
    expect(first.out).toMatch(new RegExp(`^${Object.keys(PROMISED).length + 1} files in .*, from \\d+ tickets; 1 cell to fix\\.$`));
    expect((await readdir(out)).sort()).toEqual([...Object.keys(PROMISED), "summary.json"].sort());
    expect(await readdir(join(home, "out"))).toEqual(["deep"]);
  });

  test.each(Object.entries(PROMISED))("%s has every promised column in order, and a note last", async (file, promised) => {
    const { meta } = await rows(out, file), columns = promised.split(", ");
    expect(meta.fields?.slice(0, columns.length)).toEqual(columns);
    expect(meta.fields?.at(-1)).toBe("note");
  });

  test("counts failures with both denominators and for every way of coming in, and leaves a share empty under ten", async () => {
    const { data } = await rows(out, "failure-rates.csv");
    expect(data.find((row) => row.position === "ar_clutch" && row.model === "*" && row.came_in === "*" && row.denominator === "strict"))
      .toMatchObject({ maker: "*", inspected: "2", failed: "1", rate: "", rate_low: expect.stringMatching(/^0\.0/) });
    expect(new Set(data.map((row) => `${row.came_in ?? ""} ${row.denominator ?? ""}`)).size).toBe(6);
    expect(data.every((row) => (row.note ?? "") !== "")).toBe(true);
    expect(data.filter((row) => row.model !== "*" && row.verdict !== "too few")).toEqual([]);
    expect(data.filter((row) => row.model === "*" && row.verdict !== "")).toEqual([]);
  });

  test("names the cell that could not be taken, with file, line and reason", async () => {
    const { data } = await rows(out, "rejected.csv");
    expect(data).toContainEqual(expect.objectContaining({ file: "tickets.csv", line: "4" }));
    expect(data.every((row) => (row.reason ?? "") !== "")).toBe(true);
  });

  test("gives the advice with its reason, and no cell that a spreadsheet would run", async () => {
    const { data } = await rows(out, "restock.csv");
    expect(data.find((row) => row.part_no === "B-1")).toMatchObject({ interchange: "bearing 7x11x3 sealed", on_hand: "0", status: "order" });
    expect(await readFile(join(out, "restock.csv"), "utf8")).toContain("'=SUM(A1)");
  });

  test("plots money against jobs from nothing on, and leaves the score empty with the reason while the records are short", async () => {
    const { data } = await rows(out, "stock-curve.csv");
    expect(data[0]).toMatchObject({ spend: "0", bought: "", cost: "0" });
    expect(data.slice(1).every((row, i) => Number(row.spend) > Number(data[i]?.spend) && Number(row.jobs_without_wait) >= Number(data[i]?.jobs_without_wait))).toBe(true);
    expect((await rows(out, "advice-score.csv")).data).toEqual([expect.objectContaining({ policy: "as advised", jobs_without_wait: "", spend: "", note: expect.stringContaining("a year is needed") })]);
  });

  test("says in the summary what it counted, for which day, with which settings", async () => {
    const told = JSON.parse(await readFile(join(out, "summary.json"), "utf8")) as Record<string, Record<string, unknown>>;
    expect(told).toMatchObject({
      as_of: "2024-03-16", as_of_from: "the newest day in the records", date_range: { from: "2024-03-01", to: "2024-03-15" },
      settings: { review_days: 14, targets: { A: 0.95, B: 0.9, C: 0.8 } }, versions: { saltbench: expect.stringMatching(/^\d/) },
    });
    expect(Object.keys(told.morning ?? {})).toEqual(expect.arrayContaining(["to_order", "most_failing", "slowest", "rows_to_fix", "cautions"]));
  });

  test("names the tickets whose rows contradict each other, and the numbers it reads otherwise than written", async () => {
    const path = await folder("twice", { "tickets.csv": `${TICKETS}T1,2024-03-01,2024-03-04,Brackhelm,Whinbeck 40,spinning,planned,full service,90\nt 9,2024-03-20,,Brackhelm,Whinbeck 40,spinning,planned,drag,20\n` });
    const out = join(home, "twice out"), ran = await run(path, "--out", out);
    const told = JSON.parse(await readFile(join(out, "summary.json"), "utf8")) as { counts: Record<string, number>; conflicts: unknown; ticket_numbers_respelt: unknown };
    expect(ran.out).toMatch(/, 1 ticket number with contradicting rows \(conflicts in summary\.json\)\.$/);
    expect([told.counts["tickets_in_conflict"], told.counts["ticket_numbers_respelt"]]).toEqual([1, 1]);
    expect(told.conflicts).toEqual([{ ticket_no: "T1", differs: ["labour_min"], rows: [
      { file: "tickets.csv", line: 6, counts: true, labour_min: 90 }, { file: "tickets.csv", line: 2, counts: false, labour_min: 60 }] }]);
    expect(told.ticket_numbers_respelt).toEqual([{ written: "t 9", ticket_no: "T9" }]);
  });
  test("gives the same bytes again, also into a folder that has the old report in it", async () => {
    const read = async () => Promise.all((await readdir(out)).sort().map((name) => readFile(join(out, name), "utf8")));
    const before = await read();
    expect((await run(join(home, "shop"), "--out", out)).code).toBe(0);
    expect(await read()).toEqual(before);
  });

  test("takes the day that is asked for", async () => {
    const other = join(home, "asked");
    expect((await run(join(home, "shop"), `--out=${other}`, "--as-of", "2024-03-10")).code).toBe(0);
    const told = JSON.parse(await readFile(join(other, "summary.json"), "utf8")) as Record<string, unknown>;
    expect([told.as_of, told.as_of_from]).toEqual(["2024-03-10", "asked for"]);
  });

  test("reads one flat sheet of any name, given as a folder or as the file, and not its own output beside it", async () => {
    const sheet = TICKETS.replace("ticket_no", "job no").replace("received_on", "date in");
    const path = await folder("flat", { "My jobs 2024.csv": sheet });
    expect((await run(path, "--out", path)).code).toBe(0);
    const before = JSON.parse(await readFile(join(path, "summary.json"), "utf8")) as { counts: { tickets: number } };
    expect(before.counts.tickets).toBeGreaterThan(0);
    expect((await run(join(path, "My jobs 2024.csv"), "--out", join(home, "one"))).code).toBe(0);
    expect((await run(path, "--out", path)).code).toBe(0);
    expect(JSON.parse(await readFile(join(path, "summary.json"), "utf8"))).toEqual(before);
  });
});

describe("npm run report with nothing to read", () => {
  const none = () => join(home, "none");
  const refused = async (...argv: string[]) => {
    const { code, err } = await run(...argv);
    expect(code).toBe(2);
    expect(err.split("\n").length).toBe(1);
    expect(await readdir(home)).not.toContain("none");
    return err;
  };

  test("exits 2 with one clear line and writes nothing, whatever is missing", async () => {
    expect(await refused(join(home, "nowhere"), "--out", none())).toBe(`Nothing to read: there is no ${join(home, "nowhere")}.`);
    expect(await refused(await folder("empty", {}), "--out", none())).toMatch(/^Nothing to read in .*empty: no tickets\.csv/);
    expect(await refused(await folder("hollow", { "tickets.csv": "ticket_no,received_on,model\n" }), "--out", none())).toMatch(/^Nothing to read\. tickets\.csv: /);
    expect(await refused(await folder("odd", { "tickets.csv": new Uint8Array([0xff, 0xd8, 0xff, 0xe0]) }), "--out", none())).toMatch(/^Nothing to read\. tickets\.csv: This is a picture/);
  });

  test("exits 2 with the way to call it when the call is wrong", async () => {
    expect(await refused()).toMatch(/^Usage: npm run report/);
    expect(await refused(home, "--out")).toMatch(/^--out needs a value\. Usage/);
    expect(await refused(home, "--to", none())).toMatch(/^Unknown option --to\. Usage/);
    expect(await refused(home, home, "--out", none())).toMatch(/^One folder only/);
    expect(await refused(home, "--out", none(), "--as-of", "15.3.2024")).toMatch(/^--as-of needs a day/);
  });
});
