import { describe, expect, test } from "vitest";
import { noteFindings } from "../../../src/records/notes/note-findings.ts";
import type { NoteContext, NoteFinding } from "../../../src/records/notes/note-finding.ts";
import { settled } from "../../../src/records/notes/settled.ts";
import type { ReelKind } from "../../../src/records/vocabulary.ts";

const words = (findings: readonly NoteFinding[]) => findings.map((one) => `${one.position ?? `?${one.family ?? ""}`} ${one.action ?? "none"}`);
/** What is taken of a note, and what is asked. */
function read(text: string, reel_kind: ReelKind | null = "spinning", cell: NoteContext["cell"] = "note") {
  const { taken, asked } = settled(noteFindings(text, { reel_kind, cell }), new Map());
  return { taken: words(taken), asked: words(asked) };
}

// The readings below are common practice, no source.
describe("a word for a mechanism or a place as often as for the part", () => {
  test.each<[string, ReelKind, string]>([
    ["level wind cleaned", "baitcaster", "lw_line_guide cleaned"], ["spool replaced", "spinning", "spool replaced"], ["handle tightened", "spinning", "handle_arm adjusted"],
    ["drag smooth", "spinning", "drag_washer_friction left"], ["body cleaned", "spinning", "body cleaned"],
  ])("is asked about and not taken: %s", (text, kind, asked) => { expect(read(text, kind)).toEqual({ taken: [], asked: [asked] }); });
  test.each<[string, ReelKind, string]>([
    ["drag cleaned", "spinning", "drag_washer_friction cleaned"], ["handle straightened", "spinning", "handle_arm adjusted"], ["star replaced", "conventional", "star replaced"],
    ["handle tightened", "fly", "fly_handle adjusted"], ["drags ok", "conventional", "drag_washer_friction left"],
  ])("is taken where what was done is done to the part alone: %s", (text, kind, taken) => { expect(read(text, kind)).toEqual({ taken: [taken], asked: [] }); });
  test("is no question where nothing was done to it", () => {
    expect(read("line roller bearing replaced, bail ok. Took it to the handle and spool, all tested")).toEqual({ taken: ["line_roller_bearing replaced"], asked: [] });
  });
});

describe("what was looked at", () => {
  test.each(["unmarked", "no play", "straight", "left alone", "reused", "next time"])("is taken of a part called by one word: pinion %s", (said) => {
    expect(read(`pinion ${said}`)).toEqual({ taken: ["pinion_gear left"], asked: [] });
  });
  test("is asked where it may be said of what the part does: pinion smooth", () => { expect(read("pinion smooth")).toEqual({ taken: [], asked: ["pinion_gear left"] }); });
});

describe("a screw that only its neighbours place", () => {
  test("is asked about, and taken where it is joined to them or named in full before", () => {
    expect(read("Bail arm loose. Screw tightened.").asked).toContain("bail_screw adjusted");
    expect(read("osc slider + screw", "spinning", "parts").taken).toEqual(["osc_slider replaced", "osc_screw replaced"]);
    expect(read("bail screw lost. new screw").taken).toEqual(["bail_screw replaced"]);
  });
});

describe("a bare word that names no place", () => {
  test.each<[string, ReelKind, string]>([
    ["left hand bearing gritty, new", "baitcaster", "spool_bearing_left replaced"], ["bushing under the handle worn out, put new", "baitcaster", "main_bearing_bush replaced"],
    ["preset knob freed, cam greased", "conventional", "drag_lever lubricated"],
  ])("is asked about with the place it most likely has: %s", (text, kind, asked) => { expect(read(text, kind).asked).toContain(asked); });
  test.each(["bearing replaced", "seal replaced"])("stays without a place where nothing near tells one: %s", (text) => {
    expect(read(text)).toEqual({ taken: [`?${text.startsWith("b") ? "ball bearing" : "seal"} replaced`], asked: [] });
  });
  test("is not guessed at in a list of parts, nor behind a word we do not know", () => {
    expect(read("main gear brg x 2, shims", "spinning", "parts").taken).toContain("?washer or shim replaced");
    expect(read("AR clutch replaced, wobbet spring replaced").asked).toContain("?spring replaced");
  });
});

describe("a note whose kind of reel nothing says", () => {
  test("is read as its parts prove: a level wind is on reels with a turning spool", () => {
    expect(read("spool bearings replaced both, level wind cleaned", null).taken).toEqual(["spool_bearings_pair replaced"]);
  });
  test("is a guess where only several words together tell, and is asked", () => {
    expect(read("worn pawl replaced, worm good, spool bearings good just oiled", null)).toEqual({ taken: [], asked: expect.arrayContaining(["lw_pawl replaced", "lw_worm left"]) });
  });
  test("names no place where one word could be on any reel", () => { expect(read("pawl replaced", null)).toEqual({ taken: [], asked: [] }); });
});

describe("a list of parts", () => {
  test("names what is put on as a thing: it is no work on the part before it", () => {
    expect(read("Bail spring x1, bail arm screw x1, threadlocker", "spinning", "parts").taken).toEqual(["bail_spring replaced", "bail_screw replaced"]);
    expect(read("spool bearing oil, drag grease", "baitcaster", "parts")).toEqual({ taken: [], asked: [] });
  });
});

describe("names in pieces", () => {
  test.each<[string, ReelKind, string]>([
    ["new 4x7x2.5 in roller", "spinning", "line_roller_bearing replaced"], ["Handle has play in the folding joint, left", "spinning", "handle_joint left"],
    ["rim of spool bent, straightened", "fly", "fly_spool adjusted"], ["bearing from spool both sides cleaned", "conventional", "spool_bearings_pair cleaned"],
    ["left & right spool bearing replaced", "conventional", "spool_bearing_left replaced"], ["pinion brg (rear) replaced", "spinning", "pinion_bearing_rear replaced"],
    ["AR cover replaced", "spinning", "ar_cover replaced"], ["one-way clutch changed to left hand", "fly", "fly_oneway adjusted"], ["pinion & drive ok", "spinning", "main_gear left"],
  ])("%s", (text, kind, taken) => { expect(read(text, kind).taken).toContain(taken); });
});

describe("a part named in passing", () => {
  test.each<[string, ReelKind, string[]]>([
    ["took side cover and rotor off to get at pinion brg. pinion brg rough, new one", "spinning", ["pinion_bearing_front replaced"]],
    ["cast control knob missing o-ring, fitted", "baitcaster", ["cast_control_seal replaced"]], ["main bearings: put new grease in", "spinning", ["main_bearing_handle lubricated", "main_bearing_plate lubricated"]],
  ])("gets nothing of what was done to another: %s", (text, kind, taken) => { expect(read(text, kind).taken).toEqual(taken); });
  test("of which one is ordered for stock in brackets is ordered all the same", () => {
    expect(read("osc gear teeth worn, ordered 2 (one for stock)").taken).toEqual(["osc_gear wanted"]);
  });
});

describe("slips of the pen", () => {
  test("that leave a letter out are put right before those that change one: chaged is changed, not chased", () => {
    expect(read("line roller bearing chaged").taken).toEqual(["line_roller_bearing replaced"]);
    expect(read("main shaft polshed").taken).toEqual(["main_shaft adjusted"]);
  });
});

describe("plain and rough words", () => {
  test.each([["bail spring popped a new one in", "bail_spring replaced"], ["line roller clagged up, brushed clean", "line_roller cleaned"], ["osc gear crook, none here", "osc_gear wanted"],
    ["AR sleeve scored, ran out, left as found", "ar_sleeve left"], ["main shaft rolled true", "main_shaft adjusted"], ["pinion gear dry as a bone, oil only", "pinion_gear lubricated"]])("%s", (text, taken) => {
    expect(read(text).taken).toEqual([taken]);
  });
});
