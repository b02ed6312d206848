import { describe, expect, test } from "vitest";
import { cellValue } from "../../../src/records/checking/cell.ts";
import { Wrong } from "../../../src/records/checking/wrong.ts";
import { table } from "../../../src/records/columns.ts";

const column = (table_name: string, name: string) => {
  const found = table(table_name).columns.find((one) => one.name === name);
  if (!found) throw new RangeError(`${table_name} has no ${name}`);
  return found;
};
/** The value, or the reason with a ✗ in front. */
function cell(where: string, text: string, around = {}): unknown {
  const [table_name = "", name = ""] = where.split(".");
  const value = cellValue(text, column(table_name, name), { last_day: "2027-06-01", reel_kind: null, position: null, ...around });
  return value instanceof Wrong ? `✗ ${value.reason}` : value;
}

describe("dates", () => {
  test.each([
    ["2026-03-14", "2026-03-14"], ["2026/3/14", "2026-03-14"], ["2026.03.14", "2026-03-14"], ["20260314", "2026-03-14"],
    ["14/03/2026", "2026-03-14"], ["03/14/2026", "2026-03-14"], ["14.3.2026", "2026-03-14"], ["05/05/2026", "2026-05-05"],
    ["14 March 2026", "2026-03-14"], ["14-Mar-2026", "2026-03-14"], ["March 14, 2026", "2026-03-14"], ["1st Sept 2026", "2026-09-01"],
    ["2026-03-14 19:14", "2026-03-14"], ["2026-03-14T19:14:05.5Z", "2026-03-14"], ["2024-02-29", "2024-02-29"],
    ["1950-01-01", "1950-01-01"], ["2027-06-01", "2027-06-01"],
  ])("%s is %s", (text, day) => expect(cell("tickets.received_on", text)).toBe(day));
  test.each([
    ["03/04/2026", "“03/04/2026” could be 3 April 2026 or 4 March 2026; write 2026-04-03 or 2026-03-04"],
    ["03/04/25", "“03/04/25” has a year of two digits; write the date as 2026-03-14"],
    ["2026-02-30", "“2026-02-30” is a day the calendar does not have; look it up and write it as 2026-03-14"],
    ["2023-02-29", "“2023-02-29” is a day the calendar does not have; look it up and write it as 2026-03-14"],
    ["31/04/2026", "“31/04/2026” is a day the calendar does not have; look it up and write it as 2026-03-14"],
    ["00/00/0000", "“00/00/0000” is a day the calendar does not have; look it up and write it as 2026-03-14"],
    ["0000-00-00", "“0000-00-00” is a day the calendar does not have; look it up and write it as 2026-03-14"],
    ["2026-13-01", "“2026-13-01” is a day the calendar does not have; look it up and write it as 2026-03-14"],
    ["14 Mars 2026", "“14 Mars 2026” is a day the calendar does not have; look it up and write it as 2026-03-14"],
    ["yesterday", "“yesterday” is not a date; write it as 2026-03-14"],
    ["45000", "“45000” is not a date; write it as 2026-03-14"],
    ["1949-12-31", "31 December 1949 is before 1950; is the year right?"],
    ["2027-06-02", "2 June 2027 is more than a year from now; is the year right?"],
  ])("%s goes to the rows to fix", (text, reason) => expect(cell("tickets.received_on", text)).toBe(`✗ ${reason}`));
});

describe("numbers", () => {
  test.each([
    ["55", 55], ["12.5", 12.5], [".75", 0.75], ["+3", 3], ["1e3", 1000], ["1,234.50", 1234.5], ["1.234,50", 1234.5], ["12,5", 12.5],
    ["0,125", 0.125], ["1 240,50", 1240.5], ["1\u00A0240.5", 1240.5], ["1'240", 1240], ["-0", 0],
  ])("%s days is %d", (text, number) => expect(cell("tickets.salt_days", text)).toBe(number));
  test.each([
    ["lots", "“lots” is not a number; write figures alone, such as 12.5"], ["~30", "“~30” is not a number; write figures alone, such as 12.5"], ["NaN", "“NaN” is not a number; write figures alone, such as 12.5"], ["Infinity", "“Infinity” is not a number; write figures alone, such as 12.5"],
    ["0x1F", "“0x1F” is not a number; write figures alone, such as 12.5"], ["1_000", "“1_000” is not a number; write figures alone, such as 12.5"], ["1e400", "Infinity is not a number that can be kept"],
    ["1,234", "“1,234” could be 1234 or 1.234; write it with a point and without thousands signs"],
    ["-1", "-1 is less than 0"], ["3661", "3661 is more than 3660"], ["1.2.3", "“1.2.3” is not a number; write figures alone, such as 12.5"], ["5 5", "“5 5” is not a number; write figures alone, such as 12.5"],
  ])("%s goes to the rows to fix", (text, reason) => expect(cell("tickets.salt_days", text)).toBe(`✗ ${reason}`));
  test("1,234,567 has signs for thousands and no other reading", () => {
    expect(cell("parts.on_hand", "1,234,567")).toBe("✗ 1234567 is more than 1000000");
    expect(cell("parts.on_hand", "1.000.000")).toBe(1_000_000);
  });
  test("minutes must be more than 0, and are kept however few or many they are", () => {
    expect(cell("tickets.labour_min", "0")).toBe("✗ 0 must be more than 0");
    expect(cell("tickets.labour_min", "0.5")).toBe(0.5);
    expect(cell("tickets.labour_min", "900")).toBe(900);
  });
  test("grades are whole, 0 to 4", () => {
    expect(cell("findings.grade", "4")).toBe(4);
    expect(cell("findings.grade", "3.0")).toBe(3);
    expect(cell("findings.grade", "2.5")).toBe("✗ 2.5 is not a whole number");
    expect(cell("findings.grade", "5")).toBe("✗ 5 is more than 4");
  });
  test.each([
    ["£38.00", 38], ["€ 11,50", 11.5], ["EUR 11,50", 11.5], ["12.50 kr", 12.5], ["$1,234.50", 1234.5], ["38", 38], ["0", 0],
  ])("the amount %s is %d", (text, amount) => expect(cell("tickets.labour_charge", text)).toBe(amount));
  test.each([
    ["various", "“various” is not a number; write figures alone, such as 12.5"], ["£free", "“£free” is not an amount; write figures alone, such as 12.50"], ["12 lots", "“12 lots” is not a number; write figures alone, such as 12.5"], ["-5", "-5 is less than 0"],
  ])("the amount %s goes to the rows to fix", (text, reason) => expect(cell("tickets.labour_charge", text)).toBe(`✗ ${reason}`));
});

describe("yes and no", () => {
  test.each(["y", "Y", "yes", "YES", "1", "x", "X", "j", "true", "TRUE", "✓"])("%s is yes", (text) => expect(cell("tickets.warranty", text)).toBe(true));
  test.each(["n", "N", "no", "0", "-", "false", "FALSE"])("%s is no", (text) => expect(cell("tickets.warranty", text)).toBe(false));
  test("anything else is asked for", () => expect(cell("tickets.warranty", "maybe")).toBe("✗ “maybe” is neither yes nor no; write one of the two"));
});

describe("words", () => {
  test.each([
    ["tickets.job", "Full Service", "full service"], ["tickets.job", "svc", "full service"], ["tickets.job", "anti reverse", "anti-reverse"],
    ["tickets.reel_kind", "Spin", "spinning"], ["tickets.reel_kind", "multiplier", "conventional"], ["tickets.water", "SALT", "salt"], ["tickets.water", "river", "fresh"],
    ["tickets.rinse", "Always", "always"], ["tickets.came_in", "complaint", "complaint"], ["tickets.outcome", "Beyond  repair", "beyond repair"],
    ["findings.action", "Replaced", "replaced"], ["findings.action", "b/o", "wanted"], ["findings.action", "regreased", "lubricated"],
    ["parts.family", "Ball bearing", "ball bearing"], ["findings.position", "ar_clutch", "ar_clutch"], ["findings.position", "L/R bearing", "line_roller_bearing"],
    ["findings.mode", "pitted", "pitted"], ["findings.mode", "corroded", "pitted"],
  ])("%s: %s is %s", (where, text, word) => expect(cell(where, text)).toBe(word));
  test("a word that is none of them is told with those that are", () => {
    expect(cell("tickets.rinse", "no need")).toBe("✗ “no need” is not one of: always, sometimes, never");
  });
  test("a part that is not known, or can be several, is not guessed", () => {
    expect(cell("findings.position", "ring_North")).toBe("✗ “ring_North” is not a part of a reel that we know by this name; call it as the drawing of a reel does, such as line roller bearing");
    expect(cell("findings.position", "bearing")).toBe("✗ “bearing” can mean several parts; write which one");
    expect(cell("findings.position", "roller")).toBe("✗ “roller” can mean several parts; write which one");
    expect(cell("findings.position", "roller", { reel_kind: "spinning" })).toBe("line_roller");
  });
  test("a fault whose meaning depends on the part takes it from the part", () => {
    expect(cell("findings.mode", "twisted", { position: "body_seal" })).toBe("rolled");
    expect(cell("findings.mode", "twisted")).toBe("✗ “twisted” is not a fault that we know by this name; write for instance worn, corroded or seized, or leave it empty");
  });
});

describe("texts", () => {
  test("names have single blanks and composed letters, notes keep their lines", () => {
    expect(cell("tickets.model", "Whinbeck \n 40")).toBe("Whinbeck 40");
    expect(cell("tickets.technician", "e\u0301")).toBe("é");
    expect(cell("tickets.note", "one\r\ntwo  three")).toBe("one\ntwo  three");
  });
  test.each(["<script>alert(1)</script>", "'; drop table tickets; --", "=1+1", "__proto__", 'say "hi"', "\\N", "null", "NULL", "-"])("%s is a text like any other", (text) => {
    expect(cell("tickets.note", text)).toBe(text);
  });
  test("a text that our exports made harmless for spreadsheets comes back as it was", () => {
    expect(cell("tickets.note", "'=1+1")).toBe("=1+1");
    expect(cell("tickets.note", "''=1+1")).toBe("'=1+1");
    expect(cell("tickets.note", "'tis odd")).toBe("'tis odd");
  });
  test("what cannot be shown or is too long goes to the rows to fix", () => {
    expect(cell("tickets.note", "a\u0000b")).toBe("✗ the text holds characters that cannot be shown");
    expect(cell("tickets.note", "a\uFFFDb")).toBe("✗ the text holds characters that cannot be shown");
    expect(cell("tickets.model", "a".repeat(201))).toBe("✗ the text is longer than 200 characters");
    expect(cell("tickets.note", "a".repeat(20_001))).toBe("✗ the text is longer than 20000 characters");
  });
});
