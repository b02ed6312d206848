import { describe, expect, test } from "vitest";
import type { PartKnown } from "../../../src/answers/bench/bench.ts";
import { cellFault, inputKind, wordsOf } from "../../../src/rooms/bench/asking.ts";
import { faultWords, foundWords, groupWords, ticketTitle, unasked } from "../../../src/rooms/bench/bench-words.ts";
import { checksFor } from "../../../src/rooms/bench/checks-for.ts";
import { partsFound, partWords } from "../../../src/rooms/bench/parts-found.ts";
import { reelNamed } from "../../../src/rooms/bench/reels.ts";
import { gapWords } from "../../../src/rooms/bench/timer-words.ts";
import { cardLink } from "../../../src/rooms/bench/steps.ts";
import { ticketColumn } from "../../../src/records/bench-log/fields.ts";

const entries = (values: Record<string, string | null>) => new Map(Object.entries(values).map(([field, value]) => [field, { value, revision: 1 }]));
const place = (position: string, besides: string | null = null) => ({ position, name: position, family: "seal", besides, maybe: false });
const GROUP = { title: "Line roller", asked: [place("line_roller"), place("line_roller_screw")], besides: [place("line_roller_bush", "not opened by this job")] };

describe("a ticket in words", () => {
  test("is called by its number and reel, and says when they are missing", () => {
    expect(ticketTitle(entries({ ticket_no: "R-7", maker: "Eldmere", model: "Withy 5" }))).toBe("R-7, Eldmere Withy 5");
    expect(ticketTitle(entries({}))).toBe("No number, model not written");
  });

  test("a question answered with not known was asked", () => {
    const open = unasked(entries({ water: null, ticket_no: "R-7" }));
    expect([open.includes("water"), open.includes("ticket_no"), open.includes("rinse")]).toEqual([false, false, true]);
  });

  test("a group says how far it is, and what is not just fine", () => {
    expect(groupWords(GROUP, entries({}))).toBe("2 parts, nothing written");
    expect(groupWords(GROUP, entries({ "found:line_roller:1:grade": "0", "found:line_roller:1:action": "left" }))).toBe("1 of 2 written, all fine");
    expect(groupWords(GROUP, entries({ "found:line_roller:1:grade": "3", "found:line_roller_bush:1:grade": "4" }))).toBe("1 of 2 and 1 more written, 2 not just fine");
  });

  test("a line of findings reads as it was written, missing things are left out", () => {
    expect(foundWords({ position: "rotor", line: 1, grade: "4", mode: "seized", action: "replaced", routine: "no", part_no: "BRG-1", qty: "2" })).toBe("grade 4, seized, replaced, 2 × BRG-1");
    expect(foundWords({ position: "rotor", line: 1, action: "wanted", qty: "2" })).toBe("wanted, not in stock, 2 pieces");
    expect(foundWords({ position: "rotor", line: 1, grade: "0", action: "left" })).toBe("fine");
  });

  test("what the records would send back is told by the names on the screen", () => {
    expect(faultWords([{ column: "model", value: "", reason: "model is empty", position: null }, { column: "qty", value: "x", reason: "“x” is not a number; write figures alone, such as 12.5", position: "ar_clutch" }]))
      .toEqual(["Model, with its size: nothing is written yet.", "Anti-reverse clutch (one-way roller bearing): Pieces: “x” is not a number; write figures alone, such as 12.5."]);
  });
});

describe("asking", () => {
  test("a field says at once what the import would say", () => {
    expect(cellFault(ticketColumn("salt_days"), "4o", "2026-06-01")).toBe("“4o” is not a number; write figures alone, such as 12.5.");
    expect(cellFault(ticketColumn("salt_days"), "40,5", "2026-06-01")).toBeNull();
    expect(cellFault(ticketColumn("check_back_turn"), "a bit", "2026-06-01")).toBe("“a bit” is not a number; write figures alone, such as 12.5.");
    expect(cellFault(ticketColumn("received_on"), "2028-01-01", "2026-06-01")).toMatch(/2028|later|future|year/);
  });

  test("each column is asked in its own way", () => {
    expect([wordsOf(ticketColumn("rinse")), wordsOf(ticketColumn("warranty")), wordsOf(ticketColumn("serial"))]).toEqual([["always", "sometimes", "never"], ["yes", "no"], []]);
    expect(["received_on", "salt_days", "complaint", "serial", "check_bail"].map((field) => inputKind(ticketColumn(field)))).toEqual(["date", "number", "long", "text", "number"]);
  });

  test("free spool is asked of revolving spools and bail trips of spinning reels, all of it while the kind is unknown", () => {
    const fields = (kind: string | null) => checksFor(kind).map(({ field }) => field);
    expect([fields("spinning").includes("check_bail"), fields("spinning").includes("check_free_spool"), fields("baitcaster").includes("check_bail"), fields(null).length]).toEqual([true, false, false, 6]);
  });
});

describe("choosing from the shop's own", () => {
  const part = (part_no: string, size: string | null, positions: string[] = []): PartKnown => ({ part_no, name: size && `${size.replaceAll("x", "×")} sealed`, family: null, size, on_hand: null, positions });
  const PARTS = [part("AB-1", "4x7x2.5"), part("BRG-2", "7x11x3", ["rotor"]), part("BRG-3", "4x7x2.5", ["rotor"])];

  test("a part is found by size, number or name, those that sit at the position first; with nothing written only those", () => {
    expect(partsFound(PARTS, "4 × 7 × 2.5", "rotor").map(({ part_no }) => part_no)).toEqual(["BRG-3", "AB-1"]);
    expect(partsFound(PARTS, "brg", "body").map(({ part_no }) => part_no)).toEqual(["BRG-2", "BRG-3"]);
    expect(partsFound(PARTS, "", "rotor").map(({ part_no }) => part_no)).toEqual(["BRG-2", "BRG-3"]);
    expect(partsFound(PARTS, "clutch", "rotor")).toEqual([]);
    expect(partWords(PARTS[0] ?? part("", null))).toBe("AB-1: 4×7×2.5 sealed, shelf not known");
  });

  test("a model alone brings its maker only where one maker has it", () => {
    const reel = (maker: string, model: string) => ({ maker, model, reel_kind: "fly", tier: null, tickets: 1 });
    const reels = [reel("Eldmere", "Withy 5"), reel("Ostvarg", "Ombry 8"), reel("Eldmere", "Ombry 8")];
    expect([reelNamed(reels, "withy 5")?.maker, reelNamed(reels, "Ombry 8"), reelNamed(reels, "eldmere ombry 8")?.maker]).toEqual(["Eldmere", null, "Eldmere"]);
  });
});

test("a gap in the timer is told with the times on the wall", () => {
  const at = (hour: number, minute: number, day = 4) => new Date(2026, 4, day, hour, minute).getTime();
  expect(gapWords({ from: at(17, 5), to: at(8, 30, 5) }, at(8, 30, 5), "en-GB"))
    .toBe("The page was closed or the tablet asleep from 4 May, 17:05 to 08:30 (15 h 25). Was that work on this reel?".replaceAll("15 h 25", "15\u00a0h\u00a025"));
  expect(gapWords({ from: at(9, 0), to: at(8, 0) }, at(8, 0), "en-GB")).toBe("This computer’s clock was put back: it read 09:00 before and reads 08:00 now.");
});

test("the reel card is asked for with what the counter wrote: the model where the shop knows it, else the kind, and nothing that is not whole", () => {
  const at = (values: Record<string, string>, known: boolean) => decodeURIComponent(cardLink((field) => values[field] ?? "", known).replaceAll("+", " "));
  expect(at({ maker: "Eldmere", model: "Withy 5", reel_kind: "fly", water: "salt", salt_days: "40", months_since_service: "3.5" }, true)).toBe("#/card?reel=Eldmere Withy 5&fished=salt&days=40");
  expect(at({ model: "Withy 6", reel_kind: "fly", complaint: "slips" }, false)).toBe("#/card?reel=any fly&said=slips");
});
