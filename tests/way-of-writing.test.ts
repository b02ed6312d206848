import { afterEach, expect, test } from "vitest";
import { dayInWords } from "../src/answers/days.ts";
import { decimal, number, pieces } from "../src/answers/wording.ts";
import { answerIn, askWorker } from "../src/answers/worker-work.ts";
import { date, number as shown, percent } from "../src/ui/format.ts";
import { readWriting, writeBy } from "../src/way-of-writing.ts";

afterEach(() => writeBy(() => null));

test("answers and rooms write one number and one day the same way, whatever that way is", () => {
  // Expected by the locales' own rules (CLDR): German a point between thousands and a comma before decimals, French a narrow space.
  for (const [locale, thousand, day] of [["en-GB", "1,235", "9 March 2026"], ["en-US", "1,235", "March 9, 2026"], ["de-DE", "1.235", "9. März 2026"], ["fr-FR", "1\u202f235", "9 mars 2026"]] as const) {
    writeBy(() => locale);
    expect([number(1234.6), shown(1234.6), dayInWords("2026-03-09")], locale).toEqual([thousand, thousand, day]);
  }
  writeBy(() => "de-DE");
  expect([decimal(2, 1), pieces(1500, "reel"), percent(0.004), date("2026-03-09")]).toEqual(["2,0", "1.500 reels", "0,4 %", "9. März 2026"]);
});

test("a change of the way shows in the next sentence; without a reader the neutral way is used", () => {
  let locale: string | null = "de-DE";
  writeBy(() => locale);
  const before = number(2.5);
  locale = null;
  expect([before, number(2.5), number(12345), decimal(2, 1), dayInWords("2026-03-09")]).toEqual(["2,5", "2.5", "12\u202f345", "2.0", "9 March 2026"]);
});

test("sentences made in a worker are written the page's way", async () => {
  const { port1, port2 } = new MessageChannel();
  port1.start();
  port2.start();
  answerIn(port2 as unknown as DedicatedWorkerGlobalScope, async (value: number) => {
    const said = number(value);
    return said;
  });
  writeBy(() => "de-DE");
  const worker = Object.assign(port1, { terminate: () => { port1.close(); port2.close(); } }) as unknown as Worker;
  expect(await askWorker<number, string>(() => worker, 9876.5, {})).toBe("9.877");
});

test("a way of writing that no browser knows is said, and the browser's own is used", () => {
  expect(readWriting(null)).toEqual({ locale: null, faults: [] });
  expect(readWriting("EN-us")).toEqual({ locale: "en-US", faults: [] });
  const { locale, faults } = readWriting("not a locale");
  expect([locale, faults]).toEqual([null, ["How dates and numbers are written was kept as “not a locale”, which no browser knows; your browser's own way is used."]]);
});
