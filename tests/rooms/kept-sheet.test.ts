import { expect, test } from "vitest";
import { keptSheetText, readKeptSheet } from "../../src/rooms/morning/kept-sheet.ts";

const part = {
  title: "Order", to_do: true, nothing: "Nothing to order.", changed: "", more: { words: "On Stock", href: "#/stock" },
  items: [{ before: "2 × ", figure: "Body seal", href: "#/stock?open=BSL", after: ", 9 cu.", why: "" }],
};
const sheet = { day: "2026-01-05", lead: "Harrow Quay", parts: [part] };

test("a kept morning sheet comes back as it was", () => {
  expect(readKeptSheet(keptSheetText(sheet))).toEqual(sheet);
});

test("what is no sheet, of another version, or leads out of the app is not shown", () => {
  const text = keptSheetText(sheet);
  expect(readKeptSheet(null)).toBeNull();
  expect(readKeptSheet(text.slice(0, -3))).toBeNull();
  expect(readKeptSheet(text.replace('"version":1', '"version":2'))).toBeNull();
  expect(readKeptSheet(text.replace("#/stock?open=BSL", "javascript:alert(1)"))).toBeNull();
  expect(readKeptSheet(text.replace('"figure":"Body seal",', ""))).toBeNull();
  expect(readKeptSheet('{"version":1,"day":"2026-01-05","lead":"","parts":[null]}')).toBeNull();
});
