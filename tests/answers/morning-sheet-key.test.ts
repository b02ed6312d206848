import { expect, test } from "vitest";
import { keptLooksText, MORNING_LOOKS_SETTING, type Look } from "../../src/answers/morning/last-look.ts";
import { sheetKey, type SheetGround } from "../../src/answers/morning/sheet-key.ts";

const look = (day: string, records: string): Look => ({ day, records, figures: { order: [], watch: [], backlog_hours: null, to_answer: 0 } });
const table = { table: "tickets", rows: 2, sha256: "ab" };
const ground: SheetGround = {
  program: "0.1.0 (3fa9c1d2)", imports: [{ id: "a", import_no: 1, origin: "files", tables: [table] }], settings: { currency: "cu" }, day: "2026-11-30", locale: "en-GB",
};
const same = async (change: Partial<SheetGround>, before: SheetGround = ground) => (await sheetKey({ ...before, ...change })) === (await sheetKey(before));

test("the same records, settings, day and program give the same key, in whatever order the settings are read", async () => {
  expect(await sheetKey(ground)).toMatch(/^[0-9a-f]{64}$/);
  expect(await same({}, { ...ground, settings: { a: "1", b: "2" } })).toBe(true);
  expect(await same({ settings: { b: "2", a: "1" } }, { ...ground, settings: { a: "1", b: "2" } })).toBe(true);
});

test("another day, program, language, setting, or a setting taken out gives another key", async () => {
  expect(await same({ day: "2026-12-01" })).toBe(false);
  expect(await same({ program: "0.1.0 (00000000)" })).toBe(false);
  expect(await same({ locale: "de-DE" })).toBe(false);
  expect(await same({ settings: { currency: "cu", "bench hours": "{}" } })).toBe(false);
  expect(await same({ settings: {} })).toBe(false);
});

test("an import more, also of the bench, one left out as damaged, or other rows under the same name give another key", async () => {
  const [first] = ground.imports;
  if (!first) throw new Error("no import");
  expect(await same({ imports: [first, { ...first, id: "b", import_no: 2, origin: "bench" }] })).toBe(false);
  expect(await same({ imports: [] })).toBe(false);
  expect(await same({ imports: [{ ...first, tables: [{ ...table, sha256: "ac" }] }] })).toBe(false);
  expect(await same({ imports: [{ ...first, tables: [{ ...table, rows: 3 }] }] })).toBe(false);
});

test("the look that the sheet itself keeps changes nothing, the one it was told against does", async () => {
  const before = look("2026-11-29", "1 a"), own = look("2026-11-30", "1 a"), looks = (latest: Look, of: Look | null) => ({ settings: { ...ground.settings, [MORNING_LOOKS_SETTING]: keptLooksText({ latest, before: of }) } });
  const yesterday = { ...ground, ...looks(before, null) };
  expect(await same(looks(own, before), yesterday)).toBe(true);
  expect(await same(looks(own, look("2026-11-28", "1 a")), yesterday)).toBe(false);
});

test("a program without a version has no key, so that nothing kept is taken for today's", async () => {
  expect(await sheetKey({ ...ground, program: null })).toBeNull();
});
