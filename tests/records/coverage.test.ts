import { describe, expect, test } from "vitest";
import { coverage, position, positions } from "../../src/records/vocabulary.ts";
import type { Job, ReelKind } from "../../src/records/vocabulary.ts";

/** The matrix and its exceptions are common practice, no source. */
const at = (kind: ReelKind, job: Job, code: string) => coverage.find((row) => row.reel_kind === kind && row.job === job && row.position === code);
const level = (kind: ReelKind, job: Job, code: string) => at(kind, job, code)?.level ?? "not seen";
const levels = (kind: ReelKind, jobs: readonly Job[], code: string) => jobs.map((job) => level(kind, job, code));

describe("what a job opens", () => {
  test("names a position at most once per reel kind and job, and only on kinds that have it", () => {
    expect(new Set(coverage.map((row) => `${row.reel_kind} ${row.job} ${row.position}`)).size).toBe(coverage.length);
    expect(coverage.filter((row) => !position(row.position).reel_kinds.includes(row.reel_kind))).toEqual([]);
  });

  test("a full service inspects every position of the reel kind but the split clutch, consumables and electrics", () => {
    for (const kind of ["spinning", "conventional", "baitcaster", "fly"] as const) {
      const left = positions.filter((row) => row.reel_kinds.includes(kind) && level(kind, "full service", row.position) !== "inspected").map((row) => row.position);
      const not = ["ar_springs", "ar_rollers", "spool_bearings_pair", ...positions.filter((row) => ["EL", "CN"].includes(row.group)).map((row) => row.position)];
      expect(left.filter((code) => !not.includes(code))).toEqual([]);
      expect(coverage.filter((row) => row.reel_kind === kind && row.job === "immersion").map((row) => [row.position, row.level]))
        .toEqual(coverage.filter((row) => row.reel_kind === kind && row.job === "full service").map((row) => [row.position, row.level]));
    }
  });

  test("a line roller job inspects the line roller and nothing else", () => {
    const inspected = coverage.filter((row) => row.job === "line roller" && row.level === "inspected").map((row) => row.position);
    expect(inspected).toEqual(positions.filter((row) => row.group === "LR").map((row) => row.position));
  });

  test("a diagnosis, a warranty look, a respool and other work inspect nothing", () => {
    expect(coverage.filter((row) => row.level === "inspected" && ["diagnosis", "warranty", "respool", "other"].includes(row.job))).toEqual([]);
    expect(coverage.filter((row) => ["respool", "other"].includes(row.job))).toEqual([]);
  });

  test("an external service inspects the small spool parts and the fly handle, click and latch", () => {
    for (const code of ["drag_knob_seal", "spool_click", "spool_lip", "line_clip", "spool_shim"]) expect(level("spinning", "external", code)).toBe("inspected");
    for (const code of ["fly_click", "fly_latch", "fly_handle"]) expect(level("fly", "external", code)).toBe("inspected");
    expect(level("spinning", "external", "drag_knob")).toBe("seen");
    expect(level("fly", "external", "fly_drag_disc")).toBe("seen");
    expect(level("fly", "handle", "fly_handle")).toBe("inspected");
    expect(level("fly", "handle", "fly_click")).toBe("seen");
  });

  test("friction washers are inspected at full service, immersion and drag only", () => {
    expect(levels("spinning", ["full service", "immersion", "drag", "gear", "external"], "drag_washer_friction"))
      .toEqual(["inspected", "inspected", "inspected", "seen", "seen"]);
  });

  test("knob bearings are inspected at an external service on all but budget reels", () => {
    expect(at("spinning", "external", "knob_bearing")).toMatchObject({ level: "inspected", tier_not: "budget", optional: true });
    expect(at("spinning", "full service", "knob_bearing")).toMatchObject({ level: "inspected", tier_not: null });
    expect(coverage.filter((row) => row.tier_not !== null).every((row) => row.position === "knob_bearing" && row.job === "external")).toBe(true);
  });

  test("the anti-reverse dog is inspected at full service, gear and anti-reverse jobs", () => {
    expect(levels("conventional", ["full service", "gear", "anti-reverse", "external", "reseal"], "ar_dog"))
      .toEqual(["inspected", "inspected", "inspected", "seen", "seen"]);
    expect(level("spinning", "gear", "ar_clutch")).toBe("seen");
  });

  test("the clicker is inspected at full service only", () => {
    expect(levels("conventional", ["full service", "spool and brakes", "gear"], "clicker")).toEqual(["inspected", "seen", "seen"]);
    expect(level("conventional", "spool and brakes", "spool_bearing_left")).toBe("inspected");
  });

  test("clutch internals count only when written, the sleeve is inspected", () => {
    expect(levels("spinning", ["full service", "immersion", "anti-reverse"], "ar_springs")).toEqual(["seen", "seen", "seen"]);
    expect(levels("spinning", ["full service", "immersion", "anti-reverse"], "ar_rollers")).toEqual(["seen", "seen", "seen"]);
    expect(levels("spinning", ["full service", "anti-reverse"], "ar_sleeve")).toEqual(["inspected", "inspected"]);
  });

  test("front pinion bearing at anti-reverse, rear guard at gear and reseal, worm and pawl not at reseal", () => {
    expect(level("spinning", "anti-reverse", "pinion_bearing_front")).toBe("inspected");
    expect(levels("spinning", ["full service", "gear", "reseal", "external"], "rear_guard")).toEqual(["inspected", "inspected", "inspected", "seen"]);
    for (const code of ["osc_worm", "osc_pawl"]) expect(levels("spinning", ["full service", "gear", "reseal"], code)).toEqual(["inspected", "inspected", "seen"]);
    expect(level("spinning", "reseal", "osc_slider")).toBe("inspected");
  });

  test("a position a reel of the kind may lack is marked optional", () => {
    expect(at("spinning", "full service", "body_seal")?.optional).toBe(true);
    expect(at("spinning", "full service", "main_gear")?.optional).toBe(false);
  });
});
