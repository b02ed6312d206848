import { describe, expect, test } from "vitest";
import { isTodays, keptSheetText, ofRecords, partsOf, readKeptSheet, type KeptSheet } from "../../src/rooms/morning/kept-sheet.ts";

const part = {
  title: "Order", to_do: true, nothing: "Nothing to order.", changed: "", more: { words: "On Stock", href: "#/stock" },
  items: [{ before: "2 × ", figure: "Body seal", href: "#/stock?open=BSL", after: ", 9 cu.", why: "" }],
};
const sheet: KeptSheet = {
  day: "2026-01-05", key: "k", lead: "Harrow Quay", facts: [{ label: "Tickets", value: "2" }], first: [part], later: [{ name: "watch", part: { ...part, title: "Watch" } }],
  figures: { order: [{ key: "seal", name: "Body seal" }], watch: [], backlog_hours: 3.5, to_answer: 0 },
};
/** Kept with a right check value, as a program of ours would have kept it. */
const kept = (change: object) => keptSheetText({ ...sheet, ...change });

describe("a kept morning sheet", () => {
  test("comes back as it was, its parts in the order of the sheet", () => {
    expect(readKeptSheet(keptSheetText(sheet))).toEqual(sheet);
    expect(partsOf(sheet).map(({ title }) => title)).toEqual(["Order", "Watch"]);
  });

  test("of another version, that leads out of the app, or of which a piece is missing is not shown", () => {
    expect(readKeptSheet(null)).toBeNull();
    expect(readKeptSheet("")).toBeNull();
    expect(readKeptSheet(kept({ version: 3 }))).toBeNull();
    expect(readKeptSheet(kept({ first: [{ ...part, more: { words: "On Stock", href: "javascript:alert(1)" } }] }))).toBeNull();
    expect(readKeptSheet(kept({ first: [{ ...part, items: [{ before: "", href: "#/stock", after: "", why: "" }] }] }))).toBeNull();
    expect(readKeptSheet(kept({ later: [{ name: "weather", part }] }))).toBeNull();
    expect(readKeptSheet(kept({ figures: { ...sheet.figures, to_answer: -1 } }))).toBeNull();
    expect(readKeptSheet(kept({ first: [null] }))).toBeNull();
  });

  test("is refused for a single changed letter, wherever it is: a figure that has changed on the disk is shown to nobody", () => {
    const text = keptSheetText(sheet), read = [...text].flatMap((letter, at) => {
      const other = text.slice(0, at) + String.fromCharCode(letter.charCodeAt(0) ^ 1) + text.slice(at + 1);
      return readKeptSheet(other) === null ? [] : [at];
    });
    expect(read).toEqual([]);
  });

  test("says nothing of the tickets at the bench where it is taken for today's: they may have changed since", () => {
    expect(ofRecords({ ...sheet, later: [{ name: "tickets", part }, ...sheet.later] })).toEqual(sheet);
  });

  test("is today's where its key is the one of now; a key that is not known is no other's", () => {
    expect([isTodays(sheet, "k"), isTodays(sheet, "l"), isTodays(sheet, null), isTodays({ ...sheet, key: null }, null), isTodays(null, "k")]).toEqual([true, false, false, false, false]);
  });
});
