import { describe, expect, test } from "vitest";
import { askedGroups, hasList } from "../../../src/rooms/bench/asked-groups.ts";

const none = new Map<string, boolean>();
const groups = (reel_kind: string, job: string, there: ReadonlyMap<string, boolean> = none, tier: string | null = null) => askedGroups({ reel_kind, job, tier, there });
const of = (title: string, all = groups("spinning", "full service")) => all.find((one) => one.title === title);
const codes = (all: readonly { position: string }[] | undefined) => (all ?? []).map(({ position }) => position);

describe("what is asked at the bench", () => {
  test("goes group by group as things come off: on a spinning reel the spool first, then the line roller, the body last", () => {
    expect(groups("spinning", "full service").filter(({ asked }) => asked.length > 0).map(({ title }) => title))
      .toEqual(["Spool and drag", "Line roller", "Rotor and bail", "One-way clutch", "Pinion and shaft", "Handle", "Drive gear", "Oscillation", "Body"]);
  });

  test("is what the job opens (TRADE.md 7.2, common practice): a line-roller job asks for the line roller only", () => {
    const asked = groups("spinning", "line roller").filter((one) => one.asked.length > 0);
    expect(asked.map(({ title }) => title)).toEqual(["Line roller"]);
    expect(codes(asked[0]?.asked)).toEqual(["line_roller_screw", "line_roller_washer", "line_roller", "line_roller_bush"]);
  });

  test("leaves a place that not every reel has to the eye, until fits or findings show that the model has it", () => {
    const before = of("Line roller");
    expect(before?.besides.find(({ position }) => position === "line_roller_bearing")).toMatchObject({ besides: "not every reel has it", maybe: true });
    const known = of("Line roller", groups("spinning", "full service", new Map([["line_roller_bearing", true]])));
    expect(codes(known?.asked)).toContain("line_roller_bearing");
  });

  test("does not ask for what the fits say the model has not", () => {
    const group = of("Line roller", groups("spinning", "full service", new Map([["line_roller", false]])));
    expect([codes(group?.asked).includes("line_roller"), group?.besides.find(({ position }) => position === "line_roller")?.besides]).toEqual([false, "this model has none"]);
  });

  test("never leaves a position of the kind out: what is not asked stands beside with its reason", () => {
    const all = groups("spinning", "diagnosis").flatMap(({ asked, besides }) => [...asked, ...besides]);
    expect(codes(all)).toHaveLength(new Set(codes(all)).size);
    expect(codes(groups("spinning", "full service").flatMap(({ asked, besides }) => [...asked, ...besides])).sort()).toEqual(codes(all).sort());
    expect(new Set(all.map(({ besides }) => besides))).toContain("seen from outside");
  });

  test("is every place of the reel for a job without a list, because only what is written counts there", () => {
    expect([hasList("spinning", "other"), hasList("spinning", "full service")]).toEqual([false, true]);
    expect(codes(of("Line roller", groups("spinning", "other"))?.asked)).toContain("line_roller");
  });

  test("follows the price class where the job's list does: knob bearings on an external service not on a budget reel", () => {
    const knob = (tier: string) => codes(of("Handle", groups("spinning", "external", new Map([["knob_bearing", true]]), tier))?.asked).includes("knob_bearing");
    expect([knob("premium"), knob("budget")]).toEqual([true, false]);
  });
});
