import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, test } from "vitest";
import {
  actionNamed, actions, ambiguousWords, bearings, benchNotes, cautions, complaints, complaintShares, coverage, coverageExceptions, families, familyNamed, grades,
  groupCoverage, jobNamed, jobs, modeNamed, modes, modeSpellings, orings, oringsMetric, plainWords, position, positionNamed,
  positions, positionSpellings, reelKindNamed, reelKinds,
} from "../../src/records/vocabulary.ts";

const codes = new Set(positions.map((row) => row.position));
const ambiguous = new Set(ambiguousWords.map((row) => plainWords(row.word)));

/** All meanings of each spelling, in the form in which spellings are compared. */
function meanings(pairs: readonly (readonly [string, string])[]): [string, string[]][] {
  const found = new Map<string, Set<string>>();
  for (const [text, code] of pairs) found.set(plainWords(text), (found.get(plainWords(text)) ?? new Set()).add(code));
  return [...found].map(([text, set]) => [text, [...set]]);
}

describe("vocabulary files", () => {
  test("hold as many entries as the trade's lists they were written from", () => {
    expect(positions).toHaveLength(155);
    expect(new Set(positions.map((row) => row.group)).size).toBe(16);
    expect(positionSpellings).toHaveLength(978);
    expect(modes).toHaveLength(54);
    expect(modeSpellings).toHaveLength(370);
    expect(actions).toHaveLength(22);
    expect(grades).toHaveLength(16 * 5);
    expect(complaints).toHaveLength(30);
    expect(bearings).toHaveLength(48);
    expect(orings).toHaveLength(30);
    expect(oringsMetric).toHaveLength(20 + 8 + 9 + 4);
    expect(jobs.map((row) => row.job)).toHaveLength(16);
    expect(reelKinds.map((row) => row.reel_kind)).toEqual(["spinning", "conventional", "baitcaster", "fly", "other"]);
  });

  test("give every entry a mark of its source", () => {
    const all = [positions, positionSpellings, modes, modeSpellings, actions, grades, complaints, complaintShares, bearings, orings,
      oringsMetric, jobs, reelKinds, ambiguousWords, groupCoverage, coverageExceptions, families, benchNotes, cautions].flat();
    const key = readFileSync(resolve(import.meta.dirname, "../../data/vocabulary/SOURCES.md"), "utf8");
    const known = new Set([...key.matchAll(/^\| `?(CP|MEM|CALC|OWN|S\d+[a-z]?)`? \|/gm)].map((found) => found[1]));
    expect(known.size).toBe(4 + 23);
    const unmarked = all.filter(({ source }) => !source.split(";").every((mark) => known.has(mark.replace(/^PS:|( \(.+\))$/g, ""))));
    expect(unmarked).toEqual([]);
  });

  test("name only codes that exist", () => {
    const used = [
      ...positionSpellings.map((row) => row.position), ...coverageExceptions.map((row) => row.position), ...coverage.map((row) => row.position),
      ...complaintShares.flatMap((row) => row.positions), ...ambiguousWords.flatMap((row) => Object.values(row.by_kind)),
    ];
    expect(used.filter((code) => !codes.has(code))).toEqual([]);
    const modeWords = new Set(modes.map((row) => row.mode)), familyWords = new Set(families.map((row) => row.family));
    expect(modeSpellings.filter((row) => !modeWords.has(row.mode))).toEqual([]);
    const named = [...positions.map((row) => row.family), ...modes.flatMap((row) => row.families), ...grades.map((row) => row.family),
      ...modeSpellings.flatMap((row) => row.only_families)];
    expect(named.filter((word) => !familyWords.has(word))).toEqual([]);
    expect(complaintShares.filter((row) => !complaints.some(({ code }) => code === row.code))).toEqual([]);
    expect(complaintShares.flatMap((row) => row.positions.filter((code) => !position(code).reel_kinds.includes(row.reel_kind)))).toEqual([]);
  });

  test("never give one spelling two positions, unless it is listed as ambiguous", () => {
    const pairs = [...positionSpellings.map((row) => [row.spelling, row.position] as const),
      ...positions.flatMap((row) => [[row.position, row.position] as const, [row.name, row.position] as const])];
    expect(meanings(pairs).filter(([text, found]) => found.length > 1 && !ambiguous.has(text))).toEqual([]);
  });

  test("never give one word of action, job or reel kind two meanings", () => {
    const action = actions.flatMap((row) => [row.code, row.name, ...row.spellings].map((text) => [text, row.code] as const));
    const job = jobs.flatMap((row) => [row.job, row.code, ...row.spellings].map((text) => [text, row.job] as const));
    const kind = reelKinds.flatMap((row) => [row.reel_kind, row.letter ?? row.reel_kind, ...row.spellings].map((text) => [text, row.reel_kind] as const));
    expect([action, job, kind].flatMap(meanings).filter(([, found]) => found.length > 1)).toEqual([]);
  });

  test("give O-rings in millimetres that are their inches times 25.4, rounded to a hundredth", () => {
    // -014 is 0.489 in inside and 0.070 in thick (SAE AS568, public transcriptions)
    const ring = orings.find((row) => row.size === "AS568-014");
    expect([ring?.inside_mm, ring?.section_mm]).toEqual([12.42, 1.78]);
  });

  test("give the bearings of common drive gears their boundary sizes (plan of ISO 15, three public tables)", () => {
    expect(bearings.filter((row) => ["MR117", "688", "608"].includes(row.code)).map((row) => [row.bore_mm, row.outside_mm, row.width_shielded_mm]))
      .toEqual([[7, 11, 3], [8, 16, 5], [8, 22, 7]]);
  });
});

describe("names", () => {
  test("a position is found by code, name and spelling, whatever the case and the punctuation", () => {
    expect(["ar_clutch", "Anti-reverse clutch (one-way roller bearing)", "OWC", "L/R Bearing", "lr  bearing", "Pinion-Bearing"].map((text) => positionNamed(text)))
      .toEqual(["ar_clutch", "ar_clutch", "ar_clutch", "line_roller_bearing", "line_roller_bearing", "pinion_bearing_front"]);
    expect(plainWords("AR-Clutch ")).toBe("ar clutch");
    expect(positionNamed("flux capacitor")).toBeNull();
  });

  test("an ambiguous word names nothing until the reel kind settles it", () => {
    expect(["bearing", "roller", "clutch", "seal", "spool bearing", "spool release"].map((text) => positionNamed(text))).toEqual([null, null, null, null, null, null]);
    expect(positionNamed("Clutch", "spinning")).toBe("ar_clutch");
    expect(positionNamed("clutch", "baitcaster")).toBeNull();
    expect(positionNamed("spool bearing", "fly")).toBe("fly_spool_bearing");
    expect(positionNamed("bearing", "spinning")).toBeNull();
  });

  test("every code, name and spelling that is not ambiguous leads back to its position", () => {
    const wrong = [...positionSpellings.map((row) => [row.spelling, row.position] as const), ...positions.map((row) => [row.name, row.position] as const)]
      .filter(([text]) => !ambiguous.has(plainWords(text))).filter(([text, code]) => positionNamed(text) !== code);
    expect(wrong).toEqual([]);
    expect(positions.filter((row) => positionNamed(row.position) !== row.position)).toEqual([]);
  });

  test("a mode word leads to itself, and one that depends on the part needs the family", () => {
    expect(modes.filter((row) => modeNamed(row.mode) !== row.mode || modeNamed(row.code) !== row.mode)).toEqual([]);
    expect(["corroded", "pinched seal", "Siezed"].map((text) => modeNamed(text))).toEqual(["pitted", "pinched", "seized"]);
    expect([modeNamed("twisted"), modeNamed("twisted", "seal"), modeNamed("twisted", "shaft")]).toEqual([null, "rolled", "bent"]);
  });

  test("an action is one of the six words, with its routine flag", () => {
    expect(["repl", "seal kit fitted", "regreased", "B/O", "left"].map((text) => actionNamed(text)).map((row) => [row?.action, row?.routine]))
      .toEqual([["replaced", false], ["replaced", true], ["lubricated", false], ["wanted", false], ["left", false]]);
    expect(actionNamed("drilled out")?.grade_at_least).toBe(3);
  });

  test("jobs, reel kinds and families are found under the shop's words", () => {
    expect(["F/S", "SVC", "levelwind", "dunked", "AR"].map(jobNamed)).toEqual(["full service", "full service", "level wind", "immersion", "anti-reverse"]);
    expect(["SP", "multiplier", "Bait Caster", "fly"].map(reelKindNamed)).toEqual(["spinning", "conventional", "baitcaster", "fly"]);
    expect(["BRG", "seal or O-ring"].map(familyNamed)).toEqual(["ball bearing", "seal"]);
    expect([jobNamed("?"), reelKindNamed("?"), familyNamed("?")]).toEqual([null, null, null]);
  });

  test("asking for a position that does not exist is the caller's mistake", () => {
    expect(() => position("warp_drive")).toThrow(RangeError);
    expect(position("body_seal").family).toBe("seal");
  });
});
