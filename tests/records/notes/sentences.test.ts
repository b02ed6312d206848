import { describe, expect, test } from "vitest";
import { noteFindings } from "../../../src/records/notes/note-findings.ts";
import type { ReelKind } from "../../../src/records/vocabulary.ts";
import { said } from "./reader.ts";

/** How benches string their sentences together, and what a careful reader takes from them. Common practice, no source. */
type Case = [text: string, expected: string[], kind?: ReelKind];
const each = (cases: Case[]) => {
  test.each(cases)("%s", (text, expected, kind = "spinning") => { expect(said(text, kind)).toEqual(expected); });
};

describe("what somebody else did, did long ago or only offered is no work of this visit", () => {
  each([
    ["New handle knob fitted by customer, wrong way round", ["handle_knob none"]],
    ["AR brg replaced 2019, still fine today", ["ar_clutch left"]],
    ["line roller grooved - quoted for new one", ["line_roller none"]],
    ["pinion worn, replace next time", ["pinion_gear left"]],
    ["rotor needs replacing", ["rotor wanted 1"]],
    ["bearing he bought doesn't fit", []],
  ]);
});

describe("what follows a strange part is said of that part", () => {
  each([
    ["AR clutch ok, frob loose, tightened", ["ar_clutch left"]],
    ["line roller worn, replaced", ["line_roller replaced 1"]],
  ]);
});

describe("lists", () => {
  test("of what is needed or used, behind a colon or the verb, are needed or used as a whole", () => {
    expect(said("Needs: LR brg, body seal")).toEqual(["line_roller_bearing wanted 1", "body_seal wanted 1"]);
    expect(said("needs AR clutch & LR brg")).toEqual(["ar_clutch wanted 1", "line_roller_bearing wanted 1"]);
    expect(said("Parts: AR clutch, bail spring")).toEqual(["ar_clutch replaced 1", "bail_spring replaced 1"]);
    expect(said("flushed & relubed: bail arm, LR brg")).toEqual(["bail_arm cleaned", "line_roller_bearing cleaned"]);
  });
  each([
    ["service, drag washers, LRB, bail spring", ["drag_washer_friction replaced 1", "line_roller_bearing replaced 1", "bail_spring replaced 1"]],
    ["pinion worn, main gear worn, customer will not pay", ["pinion_gear left", "main_gear left"]],
    ["bail spring off, gears greased", ["main_gear lubricated", "pinion_gear lubricated"]],
    ["frame screws seized, drilled out, replaced all", ["frame_screws replaced 1"], "conventional"],
    ["brg kit in: 2x main, 1x LR", ["main_bearing_handle replaced 1", "main_bearing_plate replaced 1", "line_roller_bearing replaced 1"]],
  ]);
});

describe("with, in, from and by tell the part that was fitted from the one it was fitted to", () => {
  each([
    ["sealed side plate with new o-ring", ["?seal replaced 1"], "baitcaster"],
    ["AR dog + spring in", ["ar_dog replaced 1", "ar_dog_spring replaced 1"]],
    ["bearing and seal in the handle knob changed", ["knob_bearing replaced 1", "?seal replaced 1"]],
    ["noise from pinion bearing, replaced", ["pinion_bearing_front replaced 1"]],
    ["pinion chewed by yoke, both replaced", ["pinion_gear replaced 1", "clutch_yoke replaced 1"], "baitcaster"],
    ["foot cracked where it meets body, glued", ["body_foot adjusted"]],
    ["rotor removed for access to pinion bearing", []],
  ]);
});

describe("names", () => {
  test("that touch are one name: the first tells whose the second is", () => {
    expect(said("AR switch knob fell off, glued")).toEqual(["ar_selector adjusted"]);
    expect(said("drag star click spring gone, replaced", "baitcaster")).toEqual(["star_click replaced 1"]);
  });
  test("under a heading are of the heading", () => {
    expect(said("cast control: cap cleaned, spring ok", "baitcaster")).toEqual(["cast_control_cap cleaned", "cast_control_spring left"]);
  });
  test("with 'a' before them or a strange word are of something not spoken of before", () => {
    expect(said("handle oiled, tightened a screw")).toEqual(["handle_arm lubricated"]);
    expect(said("AR clutch replaced, wobbet spring replaced")).toEqual(["ar_clutch replaced 1", "?spring replaced 1"]);
  });
  test("of another kind's part give way to a shorter name", () => {
    expect(said("spool brg spins badly, replaced", "baitcaster")).toEqual(["spool_bearings_pair replaced 1"]);
  });
  each([
    ["2 off 7x11x3 main brg replaced", ["main_bearing_handle replaced 1", "main_bearing_plate replaced 1"]],
    ["new pinion brgs front and back", ["pinion_bearing_front replaced 1", "pinion_bearing_rear replaced 1"]],
    ["spool bearings: left ok, right replaced", ["spool_bearing_left left", "spool_bearing_right replaced 1"], "conventional"],
    ["gear + pinion on order", ["main_gear wanted 1", "pinion_gear wanted 1"], "conventional"],
    ["trip spring? replaced", ["?spring replaced 1"]],
  ]);
});

describe("what was done", () => {
  each([
    ["LR brg rusty/repl AR ok", ["line_roller_bearing replaced 1", "ar_clutch left"]],
    ["mesh shim removed", ["main_gear_shim adjusted"]],
    ["bail arm bent, bent it back", ["bail_arm adjusted"]],
    ["bail spring popped off its peg, put back, cleaned", ["bail_spring adjusted"]],
    ["bail screw lost, fitted longer one", ["bail_screw replaced 1"]],
    ["repl'd bail sprg, ultrasonic'd lrb", ["bail_spring replaced 1", "line_roller_bearing cleaned"]],
    ["pinion noisy, main gear shimmed, ok now", ["main_gear adjusted"]],
    ["bush fitted to line roller for now", ["line_roller_bush replaced 1"]],
    ["handle knob split, new one from the drawer", ["handle_knob replaced 1"]],
  ]);
});

describe("a fault behind the last part of a list", () => {
  const faults = (text: string) => noteFindings(text, { reel_kind: "spinning", cell: "parts" }).findings.map(({ position, mode }) => [position, mode]);
  test("is meant of those before it that can have it, and of no other", () => {
    expect(faults("LRB + main bearing pitted")).toEqual([["line_roller_bearing", "pitted"], ["main_bearing_handle", "pitted"]]);
    expect(faults("drag knob seal / main bearing pitted")).toEqual([["drag_knob_seal", null], ["main_bearing_handle", "pitted"]]);
    expect(faults("drag knob seal + body seal perished")).toEqual([["drag_knob_seal", "perished"], ["body_seal", "perished"]]);
  });
});

test("“main” with teeth is the gear", () => {
  expect(said("main worn teeth, replaced")).toEqual(["main_gear replaced 1"]);
  expect(said("new main. bearing with chipped cage")).toEqual([]);
});

describe("a part of which nothing is said", () => {
  test("is a finding only where the note is nothing but parts", () => {
    expect(said("body gasket & 3 frobs")).toEqual([]);
    expect(said("LRB x1, body gasket", "spinning")).toEqual(["line_roller_bearing replaced 1", "body_seal replaced 1"]);
    expect(said("body gasket & drag washers")).toEqual(["body_seal none", "drag_washer_friction none"]);
    expect(said("warranty claim for AR")).toEqual([]);
  });
});

test("English words that look like words of the bench are left as they are", () => {
  expect(said("AR ok. SHIPPED")).toEqual(["ar_clutch left"]);
  expect(said("bail spring received, thanks")).toEqual([]);
});
