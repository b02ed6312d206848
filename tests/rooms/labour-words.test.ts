import { describe, expect, test } from "vitest";
import { evenSample } from "../../src/answers/labour/minutes-ticks.ts";
import { minutesLines } from "../../src/rooms/labour/labour-sheet.ts";
import { jobSentence, labourRemark, labourSentence, leftOut, modelsOf, wholeJobs } from "../../src/rooms/labour/labour-words.ts";
import { job } from "./rows.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const few = job({ job: "reseal", reel_kind: "fly", n: 3, median: 37, p80: null });
const model = job({ maker: "Brackhelm", model: "Whinbeck 40", n: 311 });
const long = job({ job: "immersion", reel_kind: "conventional", n: 14, median: 112, p80: 142 });
const aside = (reason: "typed as hours" | "with waiting") => ({
  ticket_no: "R-1", received_on: "2025-03-01", job: null, reel_kind: null, maker: null, model: "Withy 5", labour_min: 1.5, reason,
  source_file: "tickets.csv", source_line: 7,
});

describe("jobSentence", () => {
  test("gives the usual time, the time for a quote and how many jobs it rests on", () => {
    expect(plain(jobSentence(job(), "en-GB"))).toBe("Full service, spinning usually takes 1 h 07, and 4 in 5 are done within 1 h 26 (612 jobs).");
  });

  test("leaves the time for a quote away where it cannot be had, and says when nothing can", () => {
    expect(plain(jobSentence(few, "en-GB"))).toBe("Reseal, fly usually takes 37 min (3 jobs).");
    expect(jobSentence({ ...few, n: 1, median: null }, "en-GB")).toBe("Reseal, fly: 1 job, too few to say how long it takes.");
    expect([labourRemark(few), labourRemark({ ...few, median: null }), labourRemark(job())]).toEqual(["too few to quote from", "too few to say", ""]);
  });
});

describe("labourSentence", () => {
  test("speaks of the commonest job and of the one with the longest bad day", () => {
    expect(plain(labourSentence([job(), model, few, long], "en-GB"))).toMatch(/^Full service, spinning usually.*Immersion, conventional usually takes 1 h 52, and 4 in 5 are done within 2 h 22/);
  });

  test("says so when no job has minutes", () => {
    expect(labourSentence([], "en-GB")).toMatch(/^Too few jobs/);
  });
});

describe("rows of a job", () => {
  test("are told apart from those of its models", () => {
    const rows = [job(), model, few];
    expect(wholeJobs(rows)).toEqual([rows[0], few]);
    expect(modelsOf(rows, job())).toEqual([model]);
    expect(modelsOf(rows, few)).toEqual([]);
  });
});

describe("leftOut", () => {
  test("counts each reason in words and leaves out what did not happen", () => {
    const labour = { rows: [], set_aside: [aside("typed as hours"), aside("typed as hours"), aside("with waiting")], tickets: 50, blank: 0 };
    expect(leftOut(labour, "en-GB")).toEqual(["2 jobs look like hours typed as minutes.", "1 job looks as if waiting was counted as work."]);
    expect(leftOut({ ...labour, set_aside: [], blank: 310 }, "en-GB")).toEqual(["310 finished jobs have no minutes written."]);
  });
});

describe("minutesLines", () => {
  test("draws jobs done five times or more with the strokes of their own kind of reel", () => {
    const labour = { rows: [job(), model, few, long], set_aside: [], tickets: 700, blank: 0 };
    const ticks = [{ job: "immersion", reel_kind: "conventional", ticks: [90, 112, 150] }, { job: "immersion", reel_kind: "fly", ticks: [1] }];
    expect(minutesLines({ labour, ticks }).map((one) => [one.name, one.ticks])).toEqual([["full service, spinning", []], ["immersion, conventional", [90, 112, 150]]]);
  });
});

describe("evenSample", () => {
  test("keeps both ends and the order, and all values while they are few", () => {
    expect(evenSample([1, 2, 3], 3)).toEqual([1, 2, 3]);
    expect(evenSample(Array.from({ length: 101 }, (_, at) => at), 5)).toEqual([0, 25, 50, 75, 100]);
  });

  test("refuses a sample of under two, naming the value", () => {
    expect(() => evenSample([1, 2, 3], 1)).toThrow(new RangeError("evenSample: most needs to be two or more, got 1"));
  });
});
