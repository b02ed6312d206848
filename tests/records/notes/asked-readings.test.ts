import { describe, expect, test } from "vitest";
import { askedReadings } from "../../../src/records/notes/asked-readings.ts";
import { TAKEN_FROM } from "../../../src/records/notes/confidence.ts";
import { noteFindings } from "../../../src/records/notes/note-findings.ts";
import { readingFault, readingsByKey, withReading, withoutReading, type OwnReading } from "../../../src/records/notes/own-readings.ts";
import { spellingBook } from "../../../src/records/notes/own-spellings.ts";
import { readAs, settled } from "../../../src/records/notes/settled.ts";
import { spellingsFrom, spellingsText } from "../../../src/records/notes/spellings-text.ts";

/** The first says something of its part that we do not read; in the second a word that we do not read may turn what is said. */
const WATCH = "AR clutch seems a bit weak, dunno", QUOTED = "quoted main gear/pinion, expecting him";
const read = (text: string, said: readonly OwnReading[] = []) =>
  settled(noteFindings(text, { reel_kind: "spinning", cell: "note" }), readingsByKey(said));
const words = (findings: ReturnType<typeof read>["taken"]) => findings.map((one) => `${readAs(one).place} ${one.action ?? "none"} ${one.qty ?? "-"}`);
const answer = (text: string, means: OwnReading["means"]): OwnReading => {
  const one = read(text).asked[0];
  if (!one) throw new RangeError(`asked-readings.test: needs a note that is asked about, not ${text}`);
  return { wording: one.text, read_as: readAs(one), means };
};

describe("a reading that is not sure", () => {
  test("is asked and not taken; a sure one is taken and not asked", () => {
    expect(words(read(WATCH).taken)).toEqual([]);
    expect(words(read(WATCH).asked)).toEqual(["ar_clutch none -"]);
    expect(words(read(QUOTED).asked)).toEqual(["main_gear none -", "pinion_gear none -"]);
    expect(words(read("line roller bearing seized, replaced").taken)).toEqual(["line_roller_bearing replaced 1"]);
    expect(read("line roller bearing seized, replaced").asked).toEqual([]);
    for (const one of read(QUOTED).asked) expect(one.confidence).toBeLessThan(TAKEN_FROM);
  });

  test("is taken as it was read, or as its owner says, or left out, in every note of the same wording", () => {
    const right = answer(WATCH, { place: "ar_clutch", action: "left" });
    expect(words(read(WATCH, [right]).taken)).toEqual(["ar_clutch left -"]);
    expect(words(read(WATCH.toUpperCase(), [right]).taken)).toEqual(["ar_clutch left -"]);
    expect(read(WATCH, [answer(WATCH, null)])).toEqual({ taken: [], asked: [] });
    const other = read(WATCH, [answer(WATCH, { place: "ar_sleeve", action: "replaced" })]).taken[0];
    expect(other).toMatchObject({ position: "ar_sleeve", family: "bushing", action: "replaced", qty: 1, qty_assumed: true, rule: "you said so", confidence: 1 });
    expect(words(read("AR clutch seems fine, dunno drag", [right]).taken)).not.toContain("ar_clutch left -");
  });

  test("of which one answer is a part that is taken already is not taken twice", () => {
    const said = [answer(QUOTED, { place: "pinion_gear", action: "wanted" })];
    const { taken, asked } = read(QUOTED, said);
    expect(words(taken)).toEqual(["pinion_gear wanted 1"]);
    expect(asked).toEqual([]);
  });
});

describe("questions about many notes", () => {
  const notes = [WATCH, QUOTED, WATCH, "AR CLUTCH seems a bit weak; dunno"].map((text) => ({ text, asked: read(text).asked }));
  test("are one for each wording, most frequent first, with some of its notes", () => {
    expect(askedReadings(notes).map(({ wording, notes: count, examples }) => [wording, count, examples.length])).toEqual([
      ["AR clutch seems a bit weak", 3, 2], ["pinion", 1, 1], ["quoted main gear", 1, 1]]);
  });
  test("do not ask about a stretch too long to come again", () => {
    const long = `quoted main gear${" for the old boat reel of his".repeat(12)}, waiting on him`, asked = [{ text: long, asked: read(long).asked }];
    expect(askedReadings(asked).every(({ wording }) => wording.length <= 240)).toBe(true);
  });
});

describe("what was said of readings", () => {
  const one = answer(WATCH, { place: "ar_clutch", action: "left" });
  test("is kept in the spelling book beside its words, and comes back as it was written", () => {
    const word = { spelling: "gizmo", reel_kind: null, position: "bail_spring" } as const, text = spellingsText([word], [one]);
    expect(spellingsFrom(text)).toEqual({ entries: [word], readings: [one], faults: [] });
    expect(spellingBook([word], [one]).readings.size).toBe(1);
    expect(spellingsFrom(spellingsText([], [])).readings).toEqual([]);
  });
  test("takes the place of what was said before of the same wording, and can be taken back", () => {
    const later = { ...one, wording: one.wording.toUpperCase(), means: null };
    expect(withReading([one], later)).toEqual([later]);
    expect(withoutReading([one], later)).toEqual([]);
  });
  test.each<[string, unknown]>([
    ["has no words of a note", { ...one, wording: " - " }],
    ["is longer than 240 letters", { ...one, wording: "bail ".repeat(60) }],
    ["does not say what its words were read as", { ...one, read_as: { place: "__proto__", action: "left" } }],
    ["must mean a part we know and what was done to it, or nothing", { ...one, means: { place: "ar_clutch", action: "eaten" } }],
    ["is not a line of the spelling book", null],
  ])("that %s cannot be used", (fault, line) => {
    expect(readingFault(line)).toBe(fault);
    if (line !== null) expect(spellingsFrom(JSON.stringify([line]))).toEqual({ entries: [], readings: [], faults: [`Line 1 of the spelling book ${fault}.`] });
  });
});
