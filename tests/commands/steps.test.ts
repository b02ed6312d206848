import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test, vi } from "vitest";
import { reportTroubles, tableTrouble } from "../../src/commands/report-check.mjs";
import { chosenSteps, countTests, runStep, summary } from "../../src/commands/steps.mjs";

const file = (status: string, ...tests: string[]) => ({ status, assertionResults: tests.map((each) => ({ status: each })) });
const report = (numPassedTests: number, numFailedTests: number, others = 0, testResults = [file("passed", "passed")]) =>
  JSON.stringify({ numPassedTests, numFailedTests, numTotalTests: numPassedTests + numFailedTests + others, testResults });

describe("the count of a Vitest run", () => {
  test("is Vitest's own when every test ran", () => {
    expect(countTests(report(12, 0), 0)).toEqual({ passed: 12, failed: 0 });
    expect(countTests(report(11, 1), 1)).toEqual({ passed: 11, failed: 1 });
  });

  test("takes a skipped test for a failed one", () => {
    expect(countTests(report(11, 0, 2), 0)).toEqual({ passed: 11, failed: 2, note: "2 did not run" });
  });

  test("takes each file that broke outside its tests for a failed one", () => {
    const files = [file("failed", "passed", "failed"), file("failed"), file("failed", "passed"), file("passed", "passed")];
    expect(countTests(report(3, 1, 0, files), 1)).toMatchObject({ passed: 3, failed: 3, note: "2 broken outside its tests" });
  });

  test("names each failed test with its reason", () => {
    const files = [{ status: "failed", assertionResults: [{ status: "failed", fullName: "the frame opens", failureMessages: ["expected 1 to be 2\n at line 3\n at line 4\n at line 5"] }] }];
    expect(countTests(report(0, 1, 0, files), 1).failures).toEqual(["the frame opens: expected 1 to be 2  at line 3  at line 4"]);
  });

  test("is one failure when Vitest ended badly for a reason of its own, when there were no tests, and when no counts came", () => {
    expect(countTests(report(11, 0), 1)).toMatchObject({ passed: 11, failed: 1 });
    expect(countTests(report(0, 0), 0)).toMatchObject({ passed: 0, failed: 1 });
    expect(countTests(null, 0)).toMatchObject({ passed: 0, failed: 1 });
  });
});

describe("the steps", () => {
  const said = () => {
    const lines: string[] = [];
    vi.spyOn(console, "log").mockImplementation((text: string) => void lines.push(...text.split("\n")));
    return lines;
  };

  test("end with the sum on a line of its own, and with 1 when anything failed or nothing ran", () => {
    const lines = said();
    expect(summary([{ title: "Types", seconds: 1, passed: 1, failed: 0 }, { title: "Tests", seconds: 2, passed: 40, failed: 0 }])).toBe(0);
    expect(lines.at(-1)).toBe("41 passed, 0 failed");
    expect(summary([{ title: "Types", seconds: 1, passed: 0, failed: 1 }, { title: "Tests", seconds: 2, passed: 40, failed: 2 }])).toBe(1);
    expect(lines.at(-1)).toBe("40 passed, 3 failed");
    summary([{ title: "Tests", seconds: 2, passed: 40, failed: 1, failures: ["the frame opens: expected 1 to be 2"] }]);
    expect(lines.slice(-2)).toEqual(["       the frame opens: expected 1 to be 2", "40 passed, 1 failed"]);
    expect(summary([])).toBe(1);
    vi.restoreAllMocks();
  });

  test("fail by a program's exit code, by a signal and when it is not there", async () => {
    said();
    vi.spyOn(console, "error").mockImplementation(() => undefined);
    const outcome = (program: string, ...args: string[]) => runStep({ name: "x", title: "X", command: () => [program, ...args] });
    const seen = [await outcome("true"), await outcome("sh", "-c", "exit 3"), await outcome("sh", "-c", "kill -9 $$"), await outcome("/no/such/program")];
    vi.restoreAllMocks();
    expect(seen.map(({ passed, failed }) => [passed, failed])).toEqual([[1, 0], [0, 1], [0, 1], [0, 1]]);
  });

  test("are all or the ones named, in their own order", () => {
    expect(chosenSteps([]).map(({ name }) => name)).toEqual(["types", "svelte", "lint", "unit", "build", "browser"]);
    expect(chosenSteps(["--only", "browser,lint"]).map(({ name }) => name)).toEqual(["lint", "browser"]);
    for (const wrong of [["--only"], ["--only", "units"], ["unit"]]) expect(() => chosenSteps(wrong)).toThrow(/^chosenSteps: arguments must be --only with some of types,/);
  });
});

describe("the check of a report", () => {
  const folder = mkdtempSync(join(tmpdir(), "saltbench-check-"));
  afterAll(() => rmSync(folder, { recursive: true }));

  test("asks each table for its columns and a row; more columns may follow", () => {
    expect(tableTrouble("file,line,column,value,reason,note\nt.csv,2,model,,missing,\n", "file,line,reason")).toBeNull();
    expect(tableTrouble("\uFEFFfile,line\r\n1,2\r\n", "file,line")).toBeNull();
    expect(tableTrouble("file,line\n", "file,line")).toBe("has no row");
    expect(tableTrouble("file,line\n", "file,line", { may_be_empty: true })).toBeNull();
    expect(tableTrouble("file\n1\n", "file,line,reason")).toBe("lacks the column line, reason");
    expect(tableTrouble("", "file")).toBe("lacks the column file");
  });

  test("names every file that is missing, empty or broken", () => {
    writeFileSync(join(folder, "labour.csv"), "");
    writeFileSync(join(folder, "summary.json"), "{");
    expect(reportTroubles(folder).map((text) => text.split(" ")[0])).toEqual([
      "rejected.csv", "failure-rates.csv", "wear.csv", "wear-effects.csv", "wear-curve.csv", "recurrences.csv", "lots.csv", "restock.csv", "stock-curve.csv", "labour.csv", "workload.csv", "forecast-score.csv", "advice-score.csv", "summary.json",
    ]);
  });
});
