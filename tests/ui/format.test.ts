import { describe, expect, test } from "vitest";
import { bytes, count, date, minutes, money, number, percent, percentRange, range, share } from "../../src/ui/format.ts";

describe("format", () => {
  test("what is missing is a dash in every form, and nought is not missing", () => {
    const missing = [
      number(null), number(undefined), number(NaN), percent(null), share(null, 3), share(3, null), percentRange(null, 0.2),
      range(1, null), money(null, "cu"), minutes(null), date(null), date("soon"), bytes(null),
    ];
    expect(missing).toEqual(missing.map(() => "–"));
    expect([number(0, 0, "en-GB"), percent(0, "en-GB"), minutes(0, "en-GB")]).toEqual(["0", "0 %", "0\u00a0min"]);
  });

  test("numbers are written as the reader's language writes them", () => {
    expect(number(1234.5, 1, "en-GB")).toBe("1,234.5");
    expect(number(1234.5, 1, "de-DE")).toBe("1.234,5");
    expect(money(1840.5, "cu", 2, "en-GB")).toBe("1,840.50\u00a0cu");
    expect(money(12, "", 0, "en-GB")).toBe("12");
  });

  test("a number that rounds to nought carries no minus", () => {
    expect(number(-0.2, 0, "en-GB")).toBe("0");
    expect(number(-0.04, 1, "de-DE")).toBe("0,0");
    expect(number(-0.6, 0, "en-GB")).toBe("-1");
  });

  test("a share shows its counts, and a percentage only from ten on", () => {
    expect(share(12, 340, "en-GB")).toBe("12 of 340 (4 %)");
    expect(share(2, 3, "en-GB")).toBe("2 of 3");
    expect(share(0, 9, "en-GB")).toBe("0 of 9");
    expect(share(1, 10, "en-GB")).toBe("1 of 10 (10 %)");
  });

  test("a share below one per cent keeps a decimal, so that few is not none", () => {
    expect(percent(0.004, "en-GB")).toBe("0.4 %");
    expect(percentRange(0.004, 0.0607, "en-GB")).toBe("0.4–6 %");
    expect(percentRange(0.0202, 0.0607, "en-GB")).toBe("2–6 %");
    expect(percentRange(0, 0.3, "en-GB")).toBe("0–30 %");
  });

  test("minutes become hours from sixty on, after rounding", () => {
    expect(minutes(72, "en-GB")).toBe("1\u00a0h\u00a012");
    expect(minutes(60, "en-GB")).toBe("1\u00a0h\u00a000");
    expect(minutes(59.6, "en-GB")).toBe("1\u00a0h\u00a000");
    expect(minutes(45, "en-GB")).toBe("45\u00a0min");
  });

  test("a day stays the same day wherever the reader sits", () => {
    expect(date("2026-03-14", "en-GB")).toBe("14 Mar 2026");
    expect(date("2026-03-14T23:59:00Z", "en-GB")).toBe("14 Mar 2026");
    expect(date("2026-03-14", "de-DE")).toBe("14. März 2026");
  });

  test("counts and sizes take the word and unit that fit", () => {
    expect(count(1, "row", "rows", "en-GB")).toBe("1 row");
    expect(count(1200, "row", "rows", "en-GB")).toBe("1,200 rows");
    expect(count(null, "row", "rows", "en-GB")).toBe("– rows");
    expect(bytes(120, "en-GB")).toBe("1 kB");
    expect(bytes(2_340_000, "en-GB")).toBe("2.3 MB");
  });
});
