import { describe, expect, test } from "vitest";
import type { Preview } from "../../../src/records/understanding/understanding.ts";
import { comingIn, rawLine, recordWords } from "../../../src/rooms/records/intake-words.ts";
import { MEANINGS, meaningOf, meaningWords } from "../../../src/rooms/records/spelling-meanings.ts";
import { unknownTogether } from "../../../src/rooms/records/unknown-together.ts";

const tally = (rows: number) => [{ reason: "x", rows, examples: [] }];
const preview = (more: Partial<Preview>): Preview => ({ rows_read: 9, records: {}, rows_to_fix: [], rows_dropped: [], remarks: [], first: [], unknown_words: [], asked_readings: [], staying_out: 0, ...more });

describe("what will come in, in words", () => {
  test("names each table with its count in the right number, tickets first", () => {
    expect(recordWords({ findings: 1, parts: 2, tickets: 3 })).toBe("3 tickets, 1 finding and 2 parts");
    expect(recordWords({ tickets: 1, findings: 0 })).toBe("1 ticket");
    expect(recordWords({})).toBe("nothing");
  });
  test("the foot adds rows to fix, rows left aside and questions without an answer, each only where there are any", () => {
    expect(comingIn(preview({ records: { tickets: 2 } }), 0)).toBe("2 tickets will come in.");
    expect(comingIn(preview({ records: { tickets: 2 }, rows_to_fix: tally(1), rows_dropped: tally(4) }), 2))
      .toBe("2 tickets will come in; 1 row to fix; 4 rows left aside; 2 questions have no answer: rows that hang on it are kept to fix.");
  });
  test("a raw row is one line without its empty end, and a very long one is cut", () => {
    expect(rawLine(["R-1", " a ", "", ""])).toBe("R-1 | a");
    expect(rawLine(["x".repeat(900)])).toHaveLength(402);
  });
});

describe("what a word of the bench can mean", () => {
  test("every meaning on the list is found by its own words, which no other has", () => {
    for (const { words, meaning } of MEANINGS) expect([words, meaningOf(words)]).toEqual([words, meaning]);
    for (const { words, meaning } of MEANINGS) expect(meaningWords(meaning)).toBe(words);
  });
  test("a known spelling, an action or a fault by its bare word will do; anything else means nothing we know", () => {
    expect([meaningOf("L/R bearing"), meaningOf(" Replaced "), meaningOf("pitted")]).toEqual([{ position: "line_roller_bearing" }, { action: "replaced" }, { mode: "pitted" }]);
    expect([meaningOf(""), meaningOf("__proto__"), meaningOf("bearing")]).toEqual([null, null, null]);
  });
});

test("unknown words of several files are one list, most frequent first", () => {
  const word = (words: string, notes: number) => ({ words, notes, examples: [`${words} here`] });
  expect(unknownTogether([[word("zf", 2), word("asst", 1)], [word("asst", 3)]]).map(({ words, notes }) => [words, notes])).toEqual([["asst", 4], ["zf", 2]]);
});
