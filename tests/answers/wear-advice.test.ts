import { describe, expect, test } from "vitest";
import type { AdviceDue, AdviceQuestion } from "../../src/answers/wear/advice.ts";
import type { AdviceRecords } from "../../src/answers/wear/advice-records.ts";
import type { PositionDue } from "../../src/answers/wear/position-due.ts";
import { positionDue } from "../../src/answers/wear/position-due.ts";
import { skipping } from "../../src/answers/wear/skipping.ts";
import { customerSlip, dueText } from "../../src/answers/wear/slip.ts";
import type { WearLine } from "../../src/answers/wear/wear-records.ts";
import type { Clock } from "../../src/answers/wear/wear.ts";

const ANY: AdviceQuestion = { reel_kind: null, maker: null, model: null, water: null, rinse: null, risk: 0.1 };
const due = (clock: Clock, rest: Partial<AdviceDue> = {}): AdviceDue => ({ clock, status: "ok", after: 12, value: 13.2, low: 9.6, high: 17, set_by: "line_roller_bearing", set_by_name: "Line roller bearing", ...rest });
const none = (clock: Clock): AdviceDue => due(clock, { status: "too few", after: null, value: null, low: null, high: null, set_by: null, set_by_name: null });

describe("when to come in, for the owner", () => {
  test("names the part with its own figure, and says that the advice is rounded down from it", () => {
    expect(dueText(ANY, due("salt_days"), due("months", { after: 1, value: 1, low: 1, high: null }))).toBe(
      "Of 100 such reels 10 have a failed line roller bearing by 13 salt days (likely 9.6 to 17); 10 have a failed line roller bearing by 1 month (likely 1 to more than seen). The advice is rounded down from this to what a customer can remember.");
    expect(dueText(ANY, due("salt_days", { value: 12 }), none("months"))).not.toContain("rounded");
  });

  test("says so where nothing can be said, and the slip then names the common practice", () => {
    expect(dueText(ANY, none("salt_days"), none("months"))).toBe("Too few records to say when a reel should come in.");
    expect(customerSlip(ANY, none("salt_days"), none("months")).lines).toEqual(["From our own bench records we cannot yet say when this reel should come in. Once a year is common practice."]);
  });
});

describe("when one part is due", () => {
  const line = (low: number, high: number | null, parts: number): WearLine => ({ position: "x", low, high, rinse: null, water: null, tier: null, sealed: null, maker: null, model: null, left_out: null, parts, linked: parts, mates: 0 });
  const place = { position: "x", name: "X", group_code: null, group_name: null, family: null };
  const found = (lines: WearLine[], clock: Clock) => positionDue(lines, { question: ANY, clock, place });

  test("a part that fails the more seldom the longer it was fished is never a reason to come in, but is counted as failing", () => {
    const early = found([line(0, 2, 30), line(2, null, 70), line(0, 40, 32), line(40, null, 68)], "salt_days");
    expect(early.found).toMatchObject({ status: "no wear", due: { value: null, low: null, high: null } });
    expect(early.failed_by?.(40).value).toBeCloseTo(0.32, 1);
  });

  test("a shape just under 1 still counts as wear by days, and not by the calendar", () => {
    const lines = [line(0, 10, 11), line(10, null, 89), line(0, 40, 35), line(40, null, 65)];
    expect([found(lines, "salt_days").found.status, found(lines, "months").found.status]).toEqual(["ok", "no wear"]);
  });
});

describe("what a skipped year costs", () => {
  const part = (position: string, longest: number): PositionDue => ({ found: { position, position_name: position.toUpperCase(), clock: "salt_days", due: { value: null, low: null, high: null }, status: "ok", longest, n: 50, failed: 9 }, failed_by: (days) => ({ value: days / 100, low: null, high: null }), share_by: (days) => days / 100 });
  const records = (costs: AdviceRecords["costs"]): AdviceRecords => ({ question: ANY, days_clock: "salt_days", by_days: [], by_months: [], places: [], costs, year: { reels: 40, reel_kind: "spinning", days: 20 } });
  const cost = (position: string, parts_cost: number | null, minutes: number | null) => ({ position, criticality: "A", parts_cost, minutes });

  test("adds up what is known, names the parts that have no price or no minutes, and leaves out what was never seen so long", () => {
    // A: 0.2 failed after 20 days, 0.4 after 40, so 0.2 more at 10 cu and 5 min each; B the same without a price; C was never seen for 40 days.
    const found = skipping([part("a", 90), part("b", 90), part("c", 30)], records([cost("a", 10, 5), cost("b", null, 5), cost("c", 4, 4)]));
    expect(found).toMatchObject({ without_price: ["B"], without_minutes: [], note: expect.stringMatching(/ 1 part is not counted: too few of them, or never seen after so many days\.$/) });
    for (const [value, wanted] of [[found?.failed_after_one, 0.4], [found?.failed_after_two, 0.8], [found?.more_parts, 2], [found?.more_minutes, 2]] as const) expect(value).toBeCloseTo(wanted, 12);
  });

  test("has no money at all where no price is known, and no cost where the records hold too few years", () => {
    expect(skipping([part("a", 90)], records([]))).toMatchObject({ more_parts: null, more_minutes: null, without_price: ["A"], without_minutes: ["A"] });
    expect(skipping([part("a", 90)], { ...records([]), year: { reels: 9, reel_kind: null, days: 20 } })).toBeNull();
  });
});
