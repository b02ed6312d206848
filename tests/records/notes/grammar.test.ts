import { describe, expect, test } from "vitest";
import { noteFindings } from "../../../src/records/notes/note-findings.ts";
import { said } from "./reader.ts";

/** Ways of writing at the bench. Common practice, no source. */
const one = (text: string) => noteFindings(text, { reel_kind: "spinning", cell: "note" }).findings[0];

describe("quantities", () => {
  test.each([
    ["bail screw x2 replaced", 2], ["2x bail screw replaced", 2], ["2 x bail screw replaced", 2], ["bail screw (2) replaced", 2], ["bail screw *2 replaced", 2],
    ["pair of bail screws replaced", 2], ["both bail screws replaced", 2], ["bail screws all 2 replaced", 2], ["2 off bail screw replaced", 2],
      ["1off bail screw replaced", 1],
    ["two bail screws replaced", 2],
  ])("%s is %i pieces, as written", (text, qty) => {
    expect(one(text)).toMatchObject({ position: "bail_screw", qty, qty_assumed: false });
  });
  test("a plural without a number is two of a pair of bearings and one set of anything else, both marked as assumed", () => {
    expect(noteFindings("spool bearings replaced", { reel_kind: "baitcaster", cell: "note" }).findings[0]).toMatchObject({ qty: 2, qty_assumed: true });
    expect(one("drag washers replaced")).toMatchObject({ qty: 1, qty_assumed: true });
  });
  test("a day, a weight and a price are no number of pieces", () => {
    for (const text of ["bail spring fitted 12/5", "drag washers replaced, 8 kg", "bail wire replaced £12"]) expect(one(text)).toMatchObject({ qty: 1,
      qty_assumed: true });
  });
});

describe("sizes", () => {
  test.each([
    ["line roller brg 4x7x2.5 replaced", "4x7x2.5"], ["line roller brg 4*7*2.5 replaced", "4x7x2.5"], ["line roller brg 7x4x2.5 replaced", "7x4x2.5"],
    ["line roller brg MR74 replaced", "mr74"], ["line roller brg 688zz replaced", "688zz"], ["body seal -014 replaced", "-014"],
      ["body seal 10x1 replaced", "10x1"],
  ])("%s", (text, size) => { expect(one(text)?.size).toBe(size); });
  test("a size alone never tells where a bearing sat", () => {
    expect(said("4x7x2.5 brg replaced")).toEqual(["?ball bearing replaced 1"]);
    expect(said("4x7x2.5", "spinning", { cell: "parts" })).toEqual(["?ball bearing replaced 1"]);
  });
  test("a size is no number of pieces", () => { expect(one("main brg 7x13x4 replaced")?.qty).toBe(1); });
});

describe("separators", () => {
  test.each(["bail spring, line roller replaced", "bail spring + line roller replaced", "bail spring & line roller replaced",
    "bail spring / line roller replaced",
    "replaced bail spring and line roller", "bail spring replaced; line roller replaced", "bail spring replaced\nline roller replaced",
      "bail spring w/ line roller replaced"])("%j", (text) => {
    expect(said(text)).toEqual(["bail_spring replaced 1", "line_roller replaced 1"]);
  });
  test("signs inside shortened words part nothing", () => {
    expect(said("a/r brg replaced")).toEqual(["ar_clutch replaced 1"]);
    expect(said("l/r brg b/o")).toEqual(["line_roller_bearing wanted 1"]);
    expect(said("bail arm c/o")).toEqual(["bail_arm cleaned"]);
    expect(said("4+1 bearings, all fine")).toEqual([]);
  });
});

describe("negation", () => {
  test("a denied fault is good news, of that part alone", () => {
    expect(said("no corrosion on main shaft, bail spring replaced")).toEqual(["main_shaft left", "bail_spring replaced 1"]);
    expect(one("pinion ok, no sign of wear")).toMatchObject({ position: "pinion_gear", action: "left", mode: null });
  });
  test.each(["didn't need drag washers", "did not replace drag washers", "drag washers not replaced", "drag washers left", "drag washers fine",
    "drag washers ok", "drag washers good"])("%s: nothing was replaced", (text) => {
    expect(said(text).filter((line) => line.includes("replaced") || line.includes("wanted"))).toEqual([]);
  });
  test("'no grease' and 'no anti reverse' say what is wrong", () => {
    expect(said("no grease on main gear, greased")).toEqual(["main_gear lubricated"]);
    expect(said("no anti reverse, clutch replaced")).toEqual(["ar_clutch replaced 1"]);
    expect(one("no bail spring, fitted")).toMatchObject({ position: "bail_spring", action: "replaced", mode: "missing" });
  });
});

describe("doubt and putting off", () => {
  test.each(["pinion worn?", "poss pinion worn, cleaned", "pinion looks worn, cleaned", "pinion borderline, cleaned"])("%s: at most grade 2", (text) => {
    for (const finding of noteFindings(text, { reel_kind: "spinning", cell: "note" }).findings) {
      expect(finding).toMatchObject({ grade_at_most: 2, grade_at_least: null });
    }
  });
  test.each(["drag washers next time", "will need drag washers", "advise drag washers", "monitor drag washers"])("%s: left, not replaced", (text) => {
    expect(said(text)).toEqual(["drag_washer_friction left"]);
  });
  test.each(["drag washers on order", "need drag washers", "drag washers o/s", "awaiting drag washers"])("%s: wanted", (text) => {
    expect(said(text)).toEqual(["drag_washer_friction wanted 1"]);
  });
});

describe("order of words", () => {
  test.each(["AR brg replaced", "new AR brg", "repl ar brg", "AR — new", "AR brg: new", "Replaced the AR bearing."])("%s", (text) => {
    expect(said(text)).toEqual(["ar_clutch replaced 1"]);
  });
  test("what is said behind a list is said of the whole list", () => {
    expect(said("pinion, main gear and bail spring all replaced")).toEqual(["pinion_gear replaced 1", "main_gear replaced 1", "bail_spring replaced 1"]);
  });
  test("one finding a part: the strongest thing done to it, with its fault", () => {
    expect(noteFindings("AR clutch slipping, cleaned, still slips, replaced", { reel_kind: "spinning", cell: "note" }).findings)
      .toMatchObject([{ position: "ar_clutch", action: "replaced", mode: "slipping" }]);
  });
});

describe("sides", () => {
  test.each([["L/H spool brg replaced", "left"], ["RHS spool bearing replaced", "right"], ["spool bearing handle side replaced", "right"],
    ["palm side spool brg replaced", "left"], ["h/side spool brg replaced", "right"]])("%s", (text, side) => {
    expect(said(text, "baitcaster")).toEqual([`spool_bearing_${side} replaced 1`]);
  });
});

describe("cells", () => {
  test("a list of parts fitted needs no word for fitting", () => {
    expect(said("bail spring, 2x main brg, AR clutch", "spinning", { cell: "parts" }))
      .toEqual(["bail_spring replaced 1", "main_bearing_handle replaced 1", "main_bearing_plate replaced 1", "ar_clutch replaced 1"]);
  });
  test("a complaint gives no findings, and what stands of it before the work is read as a complaint", () => {
    expect(said("bail spring broken, line roller seized", "spinning", { cell: "complaint" })).toEqual([]);
    expect(said("Bail wont close. Line roller seized, replaced.", "spinning", { cell: "complaint and note" })).toEqual(["line_roller replaced 1"]);
    expect(said("handle turns backwards - AR clutch cleaned", "spinning", { cell: "complaint and note" })).toEqual(["ar_clutch cleaned"]);
  });
  test("a whole service is told, and makes no findings of its own", () => {
    expect(noteFindings("full service", { reel_kind: "spinning", cell: "note" })).toEqual({ findings: [], mentions: [], whole_job: true, unknown: [] });
  });
});

describe("misspellings", () => {
  test.each([["pinoin replaced", "pinion_gear replaced 1"], ["oscilation slidr replaced", "osc_slider replaced 1"],
    ["line rollr brg replaced", "line_roller_bearing replaced 1"], ["bale sprg repl", "bail_spring replaced 1"],
    ["rotr nut replaced", "rotor_nut replaced 1"]])("%s", (text, expected) => {
    expect(said(text)).toEqual([expected]);
  });
  test.each(["nail replaced", "stool replaced", "noter replaced"])("%s is never taken for a part of a reel", (text) => { expect(said(text)).toEqual([]); });
  test("a motor is no misspelt rotor, and words of four letters are corrected only where we list them", () => {
    expect(said("motor replaced")).toEqual(["el_motor replaced 1"]);
    expect(said("bial spring replaced")).toEqual(["bail_spring replaced 1"]);
    expect(said("wrie replaced")).toEqual([]);
  });
  test("another language is kept as not understood and makes no findings", () => {
    const read = noteFindings("Kugellager gewechselt", { reel_kind: "spinning", cell: "note" });
    expect(read).toMatchObject({ findings: [], unknown: ["Kugellager gewechselt"] });
  });
});
