import { describe, expect, test } from "vitest";
import { labelWidth } from "../../src/ui/chart-sheet.ts";
import { countsInWords, likely } from "../../src/ui/share-words.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("likely", () => {
  test("says a range in words and names the per cent once", () => {
    expect(plain(likely(0.042, 0.09, "en-GB"))).toBe("between 4 and 9 %");
    expect(plain(likely(0.004, 0.05, "en-GB"))).toBe("between 0.4 and 5 %");
  });

  test("says under where the lower end is nought, over where the upper is all, about where both round alike", () => {
    expect([likely(0, 0.03, "en-GB"), likely(0.74, 1, "en-GB"), likely(0.118, 0.122, "en-GB")].map(plain)).toEqual(["under 3 %", "over 74 %", "about 12 %"]);
  });

  test("keeps a number and its per cent on one line", () => {
    expect(likely(0.042, 0.09, "en-GB")).toContain("9\u00a0%");
  });

  test("shows a dash for an unknown end", () => {
    expect([likely(null, 0.2), likely(0.1, null)]).toEqual(["–", "–"]);
  });
});

describe("countsInWords", () => {
  const row = { failed: 12, inspected: 340, rate_low: 0.0202, rate_high: 0.0607 };
  test("gives counts with their range from ten on, and the counts alone below", () => {
    expect(plain(countsInWords(row, "en-GB"))).toBe("12 of 340, likely between 2 and 6 %");
    expect(countsInWords({ ...row, failed: 2, inspected: 9 }, "en-GB")).toBe("2 of 9, too few for a share");
  });
});

describe("labelWidth", () => {
  test("goes by the longest label and is nought without labels", () => {
    expect(labelWidth(["12 of 340", "–"], 14)).toBe(70);
    expect(labelWidth([], 14)).toBe(0);
  });
});
