import { describe, expect, test } from "vitest";
import { keptLooksText, looksAfter, lookToCompare, namesChanged, readKeptLooks, recordsMark, type Look } from "../../src/answers/morning/last-look.ts";

const look = (day: string, records = "1 a", to_answer = 0): Look => ({ day, records, figures: { order: [{ key: "k", name: "Seal" }], watch: [], backlog_hours: null, to_answer } });
const TUESDAY = look("2026-11-24"), MONDAY = { day: "2026-11-30", records: "1 a" };

describe("the look that changes are told against", () => {
  test("is the one of the day before, and stays so however often the sheet is opened that day", () => {
    const first = looksAfter(null, TUESDAY), monday = looksAfter(first, look(MONDAY.day));
    expect(lookToCompare(first, MONDAY)).toEqual(TUESDAY);
    expect(lookToCompare(monday, MONDAY)).toEqual(TUESDAY);
    expect(lookToCompare(looksAfter(monday, look(MONDAY.day, "1 a", 5)), MONDAY)).toEqual(TUESDAY);
  });

  test("is the last state of that day, not its first", () => {
    const twice = looksAfter(looksAfter(null, TUESDAY), look(TUESDAY.day, "1 a", 5));
    expect(lookToCompare(twice, MONDAY)?.figures.to_answer).toBe(5);
  });

  test("is the same day's earlier one once records were brought in", () => {
    const morning = looksAfter(looksAfter(null, TUESDAY), look(MONDAY.day));
    expect(lookToCompare(morning, { day: MONDAY.day, records: "2 b" })?.day).toBe(MONDAY.day);
  });

  test("is none at the first look", () => {
    expect([lookToCompare(null, MONDAY), looksAfter(null, TUESDAY).before]).toEqual([null, null]);
  });

  test("does not move with tickets finished at the bench", () => {
    const files = { id: "a", origin: "files" };
    expect(recordsMark([files, { id: "b", origin: "bench" }])).toBe(recordsMark([files]));
    expect(recordsMark([files, { id: "c", origin: "files" }])).not.toBe(recordsMark([files]));
  });
});

describe("readKeptLooks", () => {
  test("gives back what was kept", () => {
    const looks = { latest: look("2026-11-30"), before: TUESDAY };
    expect(readKeptLooks(keptLooksText(looks))).toEqual({ looks, fault: null });
    expect(readKeptLooks(null)).toEqual({ looks: null, fault: null });
  });

  test.each([
    ["cut off", '{"version":1,"latest":'], ["a list", "[]"], ["another shape", '{"version":1,"latest":{"day":"2026-11-24"},"before":null}'],
    ["a day that is none", keptLooksText({ latest: { ...TUESDAY, day: "2026-02-30" }, before: null })],
    ["counts that are words", keptLooksText({ latest: TUESDAY, before: null }).replace('"to_answer":0', '"to_answer":"few"')],
    ["a newer version", keptLooksText({ latest: TUESDAY, before: null }).replace('"version":1', '"version":2')],
  ])("leaves aside what is damaged and says so: %s", (_, kept) => {
    const { looks, fault } = readKeptLooks(kept);
    expect(looks).toBeNull();
    expect(fault).toMatch(/^What this sheet said last time cannot be read \(.+\), so no change is told today\.$/);
  });
});

test("names are compared by their keys, not by how they are written", () => {
  expect(namesChanged([{ key: "a", name: "Seal" }, { key: "b", name: "Clutch" }], [{ key: "a", name: "seal" }, { key: "c", name: "Bail" }])).toEqual({ come: ["Bail"], gone: ["Clutch"] });
});
