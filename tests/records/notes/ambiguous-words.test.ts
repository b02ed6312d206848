import { describe, expect, test } from "vitest";
import type { ReelKind } from "../../../src/records/vocabulary.ts";
import { said } from "./reader.ts";

/** Words with several meanings and how each is to be read. Common practice at the bench, no source. */
type Case = [text: string, kind: ReelKind | null, expected: string[]];
const each = (cases: Case[]) => {
  test.each(cases)("%s (%s)", (text, kind, expected) => { expect(said(text, kind)).toEqual(expected); });
};

describe("a bare family word names no place", () => {
  each([
    ["bearing replaced", "spinning", ["?ball bearing replaced 1"]],
    ["brgs x2 replaced", "spinning", ["?ball bearing replaced 2"]],
    ["bearing replaced", null, ["?ball bearing replaced 1"]],
    ["bearing 5x11x4 replaced", "baitcaster", ["?ball bearing replaced 1"]],
    ["seal replaced", "spinning", ["?seal replaced 1"]],
    ["o-ring 10x1 replaced", "conventional", ["?seal replaced 1"]],
    ["gear replaced", "spinning", ["?gear replaced 1"]],
    ["spring replaced", "spinning", ["?spring replaced 1"]],
    ["washer replaced", "spinning", ["?washer or shim replaced 1"]],
    ["bearing cleaned", "spinning", []],
  ]);
});

describe("a roller is the line roller on a spinning reel, one of the clutch's beside words of the clutch, else it is not known", () => {
  each([
    ["roller replaced", "spinning", ["line_roller replaced 1"]],
    ["needle rollers replaced", "spinning", ["ar_rollers replaced 1"]],
    ["rollers in the one way clutch replaced", "spinning", ["ar_rollers replaced 1"]],
    ["roller replaced", "conventional", []],
    ["roller replaced", "baitcaster", []],
  ]);
});

describe("a roller bearing is settled only by what else the note says", () => {
  each([
    ["roller bearing replaced", "spinning", []],
    ["slips back, roller bearing replaced", "spinning", ["ar_clutch replaced 1"]],
    ["line twist, roller bearing replaced", "spinning", ["line_roller_bearing replaced 1"]],
  ]);
  test("the row's own complaint settles it too", () => {
    expect(said("roller bearing replaced", "spinning", { complaint: "turns backwards" })).toEqual(["ar_clutch replaced 1"]);
    expect(said("roller bearing replaced", "spinning", { complaint: "line twist" })).toEqual(["line_roller_bearing replaced 1"]);
  });
});

describe("one word is another part on another kind of reel", () => {
  each([
    ["clutch replaced", "spinning", ["ar_clutch replaced 1"]],
    ["clutch slipping under fish, drag weak, clutch replaced", "spinning", []],
    ["clutch replaced", "baitcaster", []],
    ["AR clutch replaced", "baitcaster", ["ar_clutch replaced 1"]],
    ["clutch replaced", "fly", ["fly_oneway replaced 1"]],
    ["pawl replaced", "baitcaster", ["lw_pawl replaced 1"]],
    ["bait click pawl replaced", "conventional", ["clicker replaced 1"]],
    ["pawl replaced", "fly", ["fly_click replaced 1"]],
    ["pawl replaced", "spinning", []],
    ["dog replaced", "spinning", ["ar_dog replaced 1"]],
    ["dog replaced", "conventional", ["ar_dog replaced 1"]],
    ["clicker replaced", "spinning", ["spool_click replaced 1"]],
    ["clicker replaced", "conventional", ["clicker replaced 1"]],
    ["clicker replaced", "fly", ["fly_click replaced 1"]],
    ["side plate replaced", "spinning", ["side_cover replaced 1"]],
    ["side plate replaced", "conventional", ["side_plate_r replaced 1"]],
    ["palm side plate replaced", "baitcaster", ["side_plate_l replaced 1"]],
    ["drag seal replaced", "spinning", ["drag_knob_seal replaced 1"]],
    ["drag seal replaced", "conventional", ["drag_drum_seal replaced 1"]],
    ["drag seal replaced", "fly", ["fly_hub_seal replaced 1"]],
    ["spool bearing replaced", "spinning", ["spool_support_brg replaced 1"]],
    ["spool bearing replaced", "conventional", ["spool_bearings_pair replaced 1"]],
    ["spool bearings replaced", "baitcaster", ["spool_bearings_pair replaced 2"]],
    ["spool bearing replaced", "fly", ["fly_spool_bearing replaced 1"]],
    ["lever replaced", "conventional", ["drag_lever replaced 1"]],
    ["lever replaced", "baitcaster", ["freespool_lever replaced 1"]],
    ["reverse lever replaced", "spinning", ["ar_selector replaced 1"]],
    ["lever replaced", "spinning", []],
  ]);
});

describe("a neighbour settles what a word stands for", () => {
  each([
    ["main bearing replaced", "spinning", ["main_bearing_handle replaced 1"]],
    ["main bearing rotor side replaced", "spinning", ["pinion_bearing_front replaced 1"]],
    ["handle bearing replaced", "spinning", ["?ball bearing replaced 1"]],
    ["handle knob bearing replaced", "spinning", ["knob_bearing replaced 1"]],
    ["main gear replaced", "spinning", ["main_gear replaced 1"]],
    ["pinion replaced", "spinning", ["pinion_gear replaced 1"]],
    ["gear set replaced", "spinning", ["main_gear replaced 1", "pinion_gear replaced 1"]],
    ["gears replaced", "baitcaster", ["main_gear replaced 1", "pinion_gear replaced 1"]],
    ["bail spring replaced", "spinning", ["bail_spring replaced 1"]],
    ["drag washers replaced", "spinning", ["drag_washer_friction replaced 1"]],
    ["knob replaced", "spinning", ["handle_knob replaced 1"]],
    ["drag knob replaced", "spinning", ["drag_knob replaced 1"]],
    ["tension knob replaced", "baitcaster", ["cast_control_cap replaced 1"]],
    ["brake knob replaced", "baitcaster", ["brake_dial replaced 1"]],
    ["preset knob replaced", "conventional", ["preset_knob replaced 1"]],
  ]);
});

describe("short names and common words count only where they must mean a part", () => {
  each([
    ["AR replaced", "spinning", ["ar_clutch replaced 1"]],
    ["ar brg replaced", "spinning", ["ar_clutch replaced 1"]],
    ["far too warm in the car, arm replaced", "spinning", []],
    ["star replaced", "conventional", ["star replaced 1"]],
    ["LR replaced", "spinning", ["line_roller replaced 1"]],
    ["lr brg replaced", "spinning", ["line_roller_bearing replaced 1"]],
    ["dropped in 20 ft of water, nothing replaced", "spinning", []],
    ["foot bent, straightened", "spinning", ["body_foot adjusted"]],
    ["seal pinched, replaced", "spinning", ["?seal replaced 1"]],
    ["bale wire replaced", "spinning", ["bail_wire replaced 1"]],
    ["please check and ring him", "spinning", []],
    ["in a case by post", "conventional", []],
    ["clicks when turning", "conventional", []],
  ]);
});
