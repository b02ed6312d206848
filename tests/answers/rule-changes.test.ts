import { describe, expect, test } from "vitest";
import { readRuleChanges, ruleChangesOf, ruleChangesText } from "../../src/answers/rule-changes/rule-changes.ts";

const SEAL = { from: "2024-07-01", position: "drag_knob_seal", text: "the knob seal is changed at every service" };
const ALL = { from: "2023-02-01", position: null, text: "grades are written for every part" };

describe("rule changes", () => {
  test("are kept as text and read back the same, oldest first", () => {
    expect(readRuleChanges(ruleChangesText([SEAL, ALL]))).toEqual({ changes: [ALL, SEAL], faults: [] });
    expect(readRuleChanges(null)).toEqual({ changes: [], faults: [] });
    expect(readRuleChanges("")).toEqual({ changes: [], faults: [] });
  });

  test("what cannot be read is left out and named, the rest stays", () => {
    const kept = JSON.stringify([SEAL, { ...SEAL, from: "1.7.2024" }, { ...ALL, text: " " }, 7, { ...SEAL, position: "" }]);
    expect(readRuleChanges(kept)).toEqual({
      changes: [SEAL],
      faults: [
        "A rule change was left out: its day must be written YYYY-MM-DD, got 1.7.2024.",
        "A rule change was left out: the words of 2023-02-01 must be 1 to 200 letters.",
        "A rule change was left out: a change is not written as one.",
        "A rule change was left out: the part of 2024-07-01 is not a part.",
      ],
    });
    expect(readRuleChanges("{").faults[0]).toMatch(/^The list of rule changes cannot be read: /);
    expect(readRuleChanges("{}").faults).toEqual(["The list of rule changes cannot be read: it is not a list."]);
  });

  test("a change without a real day is refused before it is kept", () => {
    expect(() => ruleChangesText([{ ...SEAL, from: "2024-02-30" }])).toThrow(new RangeError("ruleChangesText: its day must be written YYYY-MM-DD, got 2024-02-30"));
  });

  test("a part shows its own changes and those of all parts", () => {
    expect(ruleChangesOf([ALL, SEAL], "drag_knob_seal")).toEqual([ALL, SEAL]);
    expect(ruleChangesOf([ALL, SEAL], "ar_clutch")).toEqual([ALL]);
    expect(ruleChangesOf([ALL, SEAL], null)).toEqual([ALL, SEAL]);
  });
});
