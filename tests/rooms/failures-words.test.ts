import { describe, expect, test } from "vitest";
import { VERDICT_WORDS } from "../../src/answers/failures/verdict.ts";
import type { VerdictWord } from "../../src/answers/failures/verdict.ts";
import { linkTo, pageOf } from "../../src/rooms/failures/failure-links.ts";
import { FAILURE_FIELDS } from "../../src/rooms/failures/failure-filters.ts";
import { adviceLinks, cameInWords } from "../../src/rooms/failures/model-advice.ts";
import { KeptAnswer } from "../../src/ui/kept-answer.ts";
import { comebackSentence } from "../../src/rooms/failures/comeback-words.ts";
import { kindsSeen, partsByShare, partsByVerdict } from "../../src/rooms/failures/reel-parts.ts";
import { verdictBook } from "../../src/rooms/failures/verdict-book.ts";
import { rawRatio, verdictTone } from "../../src/rooms/failures/verdict-words.ts";
import { findingColumns } from "../../src/rooms/failures/failure-columns.ts";
import { costSentence } from "../../src/rooms/failures/verdict-columns.ts";
import { valuesOf } from "../../src/ui/url-state.ts";
import { rate, side, verdict } from "./rows.ts";

const values = (query: string) => valuesOf(FAILURE_FIELDS, query).values;
const href = (position: string) => `#/${position}`;

describe("pageOf", () => {
  test("goes by what the address chooses: nothing, a part, a model, both, two models, a series, or the sheet for one of these and a part", () => {
    const pages = ["", "position=a", "model=m", "position=a&model=m", "model=m&other=n", "position=a&model=m&sheet=evidence", "model=m&other=m", "other=n", "sheet=evidence", "series=s", "series=s&position=a", "series=s&position=a&sheet=evidence"];
    expect(pages.map((query) => pageOf(values(query)))).toEqual(["overview", "part", "model", "part on model", "two models", "evidence", "model", "overview", "overview", "series", "part on series", "evidence"]);
  });
});

describe("linkTo", () => {
  test("keeps the filters and leaves the page's own choices behind", () => {
    expect(linkTo(values("water=salt&position=a&model=m&sheet=evidence&found=all"), { position: "b" })).toBe("#/failures?water=salt&position=b");
  });
});

describe("adviceLinks", () => {
  test("leads to the figures of the worst part, and to the agency's page only where it stands out", () => {
    const words = (word: VerdictWord) => adviceLinks([verdict({ word })], (position, sheet) => `#/${position}/${sheet}`).map((link) => `${link.href} ${link.words}`);
    expect(words("stands out")).toEqual(["#/ar_clutch/ All figures on the one-way clutch", "#/ar_clutch/evidence A page to show the maker’s agency"]);
    expect(words("worse than most, not yet sure").length).toBe(1);
    expect(words("no different")).toEqual([]);
  });
});

describe("cameInWords", () => {
  test("leaves out what is not known", () => {
    const page = { tickets: 12, reels: 0, complaint_share: { value: null, low: null, high: null }, others_complaint_share: null, general_level: null };
    expect(cameInWords(page as unknown as Parameters<typeof cameInWords>[0])).toBe("12 tickets.");
  });

  test("gives no percentage under ten tickets", () => {
    const page = { tickets: 9, reels: 4, complaint_share: { value: 0.33, low: 0.1, high: 0.7 }, others_complaint_share: 0.3, general_level: null };
    expect(cameInWords(page as unknown as Parameters<typeof cameInWords>[0])).toBe("9 tickets on 4 reels told apart by serial number.");
  });
});

describe("rawRatio", () => {
  test("is share over share, and nothing under ten inspected or where the others never failed", () => {
    expect(rawRatio(side(32, 236, [34, 1239]))).toBeCloseTo((32 / 236) / (34 / 1239), 12);
    expect([rawRatio(side(3, 9, [34, 1239])), rawRatio(side(3, 90, [0, 1239]))]).toEqual([null, null]);
  });
});

describe("verdictBook", () => {
  const clutch = verdict(), other = verdict({ maker: "Wexmoor", model: "Slipdene 45", word: "no different", cost: { ...verdict().cost, money: 700 } });
  const series = verdict({ series: true, model: "Whinbeck", models: ["Whinbeck 40", "Whinbeck 50"] });
  test("adds up what all models cost without counting a series a second time, or another maker when one is chosen", () => {
    const all = rate(46, 1448, { maker: "*", model: "*" });
    expect(verdictBook([clutch, other, series], "").cost(all)).toBe(4007);
    expect(verdictBook([clutch, other, series], "Wexmoor").cost(all)).toBe(700);
  });

  test("finds the verdict of a part on a model by the model's full name", () => {
    expect(verdictBook([clutch, other, series], "").of("ar_clutch", "Wexmoor Slipdene 45")).toBe(other);
    expect(verdictBook([clutch], "").of("ar_clutch", "Slipdene 45")).toBeNull();
  });
});

describe("the parts of the drawing", () => {
  const rates = [rate(46, 1448, { maker: "*", model: "*" }), rate(26, 201), rate(2, 100, { model: "Dovekin 25" }), rate(3, 300, { maker: "Uffenby", model: "Dunvegg 20", reel_kind: "conventional" }), rate(1, 9, { position: "rotor", position_name: "Rotor" })];
  test("add up the models of one kind of reel only, and the kind seen most comes first", () => {
    expect(kindsSeen(rates)).toEqual(["spinning", "conventional"]);
    const [clutch, rotor] = partsByShare(rates, "spinning", href);
    expect(clutch).toMatchObject({ position: "ar_clutch", tone: "step-3", href: "#/ar_clutch" });
    expect(clutch?.figures).toMatch(/^28 of 301, likely between/);
    expect(rotor).toMatchObject({ tone: "few", figures: "1 of 9, too few for a share" });
  });

  test("of a model carry the verdict's own word beside a fill that no other word has", () => {
    expect(partsByVerdict([verdict()], "planned", href)[0]).toMatchObject({ word: "stands out", tone: "strong" });
    expect(new Set(VERDICT_WORDS.map(verdictTone)).size).toBe(VERDICT_WORDS.length);
  });
});

describe("words of cost and comebacks", () => {
  test("name minutes, parts, waiting and comebacks", () => {
    expect(costSentence(verdict().cost, "cu")).toBe("Its failures cost about 3,307\u00a0cu over these records: 38\u00a0h\u00a058 at the bench, 1,070\u00a0cu in parts, 97 days of waiting, 3 comebacks. A bench minute is counted as 0.90\u00a0cu, as the labour charges have it, a day of waiting as 5 minutes, a comeback as 20.");
  });

  test("give no share under ten failures put right", () => {
    const trend = { events: 3, word: "too few", laplace: null, laplace_p: null, shape: null, shape_p: null, lewis_robinson: null } as const;
    const row = { position: "a", position_name: "A", maker: "M", model: "m", reels: 20, failures: 4, back: 2, share: { value: null, low: 0.1, high: 0.9 }, curve: [], trend, minutes: 0, parts: 0 };
    expect(comebackSentence(row, 90)).toBe("Of 4 failures put right on reels with a serial number, 2 had failed again within 90 days (too few for a share).");
  });
});

describe("KeptAnswer", () => {
  test("asks once for one question, anew for another, and keeps nothing of what failed", async () => {
    const kept = new KeptAnswer<number>();
    let asked = 0;
    const work = () => Promise.resolve(++asked);
    expect([await kept.of("a", work), await kept.of("a", work), await kept.of("b", work)]).toEqual([1, 1, 2]);
    await expect(kept.of("c", () => Promise.reject(new Error("no")))).rejects.toThrow("no");
    expect(await kept.of("b", work)).toBe(2);
  });
});

describe("findingColumns", () => {
  const labels = (note: string | null, listed: Parameters<typeof findingColumns>[1]) =>
    findingColumns([{ note }] as unknown as Parameters<typeof findingColumns>[0], listed).map(({ label }) => label);

  test("leave out what the filters make the same in every row, and notes where nobody wrote one", () => {
    expect(labels(null, { all: false, one_model: true, one_opening: true })).toEqual(["Came in", "Ticket", "Grade", "What was wrong", "What was done", "File and line", "Salt days"]);
  });

  test("hold all that differs from row to row", () => {
    expect(labels("rattles", { all: true, one_model: false, one_opening: false })).toEqual(
      ["Came in", "Ticket", "Reel", "Counts as", "Grade", "What was wrong", "What was done", "File and line", "Why it came in", "Salt days", "Note"]);
  });
});
