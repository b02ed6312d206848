import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, describe, expect, test } from "vitest";
import { readBenchHours, benchHoursText } from "../../src/answers/bench-load/bench-hours.ts";
import { elsewhereText, readElsewhere } from "../../src/answers/elsewhere/elsewhere.ts";
import { handGroupsText, readHandGroups } from "../../src/answers/interchange/hand-groups.ts";
import { benchRatesText, readBenchRates } from "../../src/answers/labour/bench-rates.ts";
import { keptLooksText, readKeptLooks } from "../../src/answers/morning/last-look.ts";
import { readRuleChanges, ruleChangesText } from "../../src/answers/rule-changes/rule-changes.ts";
import { closuresText, readClosures } from "../../src/answers/season/bench-calendar.ts";
import { freeFrom, freeFromText, readFreeFrom } from "../../src/answers/stock/free-from.ts";
import { orderMarksText, readOrderMarks } from "../../src/answers/stock/order-marks.ts";
import { readServiceLevels, serviceLevelsText } from "../../src/answers/stock/service-levels.ts";
import { timerFrom, timerText } from "../../src/records/bench-log/bench-timer.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { mergedByItself, nameDecisions, ticketDecisions } from "../../src/records/merging/decisions.ts";
import { readFailureGrade } from "../../src/records/merging/put-together.ts";
import { openWordsText, readOpenWords } from "../../src/records/notes/open-words.ts";
import { spellingsFrom, spellingsText } from "../../src/records/notes/spellings-text.ts";
import { mappingFrom } from "../../src/records/reading/mapping.ts";
import { answersFrom, answersText } from "../../src/records/understanding/answers-text.ts";
import { readWriting } from "../../src/way-of-writing.ts";
import { LANGUAGE_NAMES, hostileJson } from "./hostile-json.ts";

const SRC = join(import.meta.dirname, "../../src");
const SOURCES = readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter((path) => path.endsWith(".ts")).map((path) => readFileSync(join(SRC, path), "utf8"));
const RUNS = Number(process.env["SALTBENCH_FUZZ"] ?? 500);

/** A reader of a kept text: what it made of it, its sentences, and the text that keeps the same again. */
interface Read { readonly value: unknown; readonly faults: readonly string[]; readonly again: string | null }

const read = <T>(value: T, faults: readonly string[], again: (value: T) => string | null): Read => ({ value, faults, again: again(value) });

/** Every setting of the ledger that holds more than a word, by the name of its constant. */
const READERS: Readonly<Record<string, (text: string) => Read>> = {
  RULE_CHANGES_SETTING: (text) => { const { changes, faults } = readRuleChanges(text); return read(changes, faults, ruleChangesText); },
  BENCH_RATES_SETTING: (text) => { const { rates, faults } = readBenchRates(text); return read(rates, faults, benchRatesText); },
  BENCH_HOURS_SETTING: (text) => { const { hours, faults } = readBenchHours(text); return read(hours, faults, benchHoursText); },
  BENCH_CALENDAR_SETTING: (text) => { const { closures, faults } = readClosures(text); return read(closures, faults, closuresText); },
  ORDER_MARKS_SETTING: (text) => { const { marks, faults } = readOrderMarks(text); return read(marks, faults, orderMarksText); },
  FREE_FROM_SETTING: (text) => { const { free_from, faults } = readFreeFrom(text); return read(free_from, faults, freeFromText); },
  SERVICE_LEVELS_SETTING: (text) => { const { levels, faults } = readServiceLevels(text); return read(levels, faults, serviceLevelsText); },
  WRITING_SETTING: (text) => { const { locale, faults } = readWriting(text); return read(locale, faults, (kept) => kept); },
  ELSEWHERE_SETTING: (text) => { const { elsewhere, faults } = readElsewhere(text); return read(elsewhere, faults, (kept) => kept && elsewhereText(kept)); },
  MORNING_LOOKS_SETTING: (text) => { const { looks, fault } = readKeptLooks(text); return read(looks, fault === null ? [] : [fault], (kept) => kept && keptLooksText(kept)); },
  HAND_GROUPS_SETTING: (text) => { const { groups, faults } = readHandGroups(text); return read(groups, faults, handGroupsText); },
  OPEN_WORDS_SETTING: (text) => { const { open, faults } = readOpenWords(text); return read(open, faults, openWordsText); },
  SPELLING_SETTING: (text) => { const { entries, faults } = spellingsFrom(text); return read(entries, faults, spellingsText); },
};

const TEXTS = fc.oneof(fc.string(), fc.string({ unit: "binary" }), fc.json({ depthSize: "medium" }), hostileJson, hostileJson, hostileJson);

const own = () => [...Object.getOwnPropertyNames(Object.prototype), ...Object.getOwnPropertyNames(Array.prototype)].join();
const BEFORE = own();
afterEach(() => { expect(own()).toBe(BEFORE); });

describe("whatever text stands in a setting", () => {
  test("every setting with a reader is among those tried here", () => {
    const named = SOURCES.flatMap((text) => [...text.matchAll(/export const (\w+_SETTING)\b/g)].map(([, name]) => name));
    expect(named.sort()).toEqual(Object.keys(READERS).sort());
  });

  test.each(Object.entries(READERS))("%s is read without a throw, and what could be read is kept and read the same again", (_name, reader) => {
    fc.assert(fc.property(TEXTS, (text) => {
      const { value, faults, again } = reader(text);
      for (const fault of faults) expect(fault).toMatch(/^[A-Z].*\.$/s);
      expect(JSON.stringify(value)).not.toMatch(/NaN|Infinity|undefined/);
      const once_more = again === null ? null : reader(again);
      if (once_more) expect([JSON.stringify(once_more.value), once_more.faults]).toEqual([JSON.stringify(value), []]);
    }), { numRuns: RUNS });
  });

  test("the failure grade, the timer at the bench and what was decided of names and tickets are read or count as none", async () => {
    const ledger = openMemoryLedger();
    await fc.assert(fc.asyncProperty(TEXTS, async (text) => {
      for (const name of ["names decided", "tickets decided", "names merged by themselves"]) await ledger.keepSetting(name, text);
      const names = await nameDecisions(ledger), tickets = await ticketDecisions(ledger);
      expect(names.every(({ from }) => typeof from.model === "string") && tickets.every(({ ticket_no }) => typeof ticket_no === "string")).toBe(true);
      expect(["sure", "likely", "a guess"]).toContain(await mergedByItself(ledger));
      const { grade, faults } = readFailureGrade(text);
      expect([null, 1, 2, 3, 4].includes(grade) && (grade !== null || faults.length === 1)).toBe(true);
      expect(timerText(timerFrom(timerText(timerFrom(text))))).toBe(timerText(timerFrom(text)));
    }), { numRuns: RUNS });
  });

  test("answers kept for a file and a mapping.json are read, or refused in a sentence", () => {
    const refused = (work: () => unknown) => {
      try { return work(); } catch (error) {
        if (!(error instanceof Error) || error.name !== "Unreadable") throw error;
        expect(error.message).toMatch(/^(The answers|mapping\.json|In mapping\.json).*\.$/s);
        return null;
      }
    };
    fc.assert(fc.property(TEXTS, (text) => {
      refused(() => expect(answersFrom(answersText(answersFrom(text)))).toEqual(answersFrom(text)));
      refused(() => mappingFrom(text));
    }), { numRuns: RUNS });
  });

  test("a supplier who bears a name of the language has the value written for it, or none", () => {
    for (const name of LANGUAGE_NAMES) expect([name, freeFrom({}, name)]).toEqual([name, null]);
    for (const name of LANGUAGE_NAMES) {
      const { free_from } = readFreeFrom(`{${JSON.stringify(name)}: 60}`);
      expect([name, freeFrom(free_from, name), freeFrom(readFreeFrom(freeFromText(free_from)).free_from, name)]).toEqual([name, 60, 60]);
    }
  });
});
