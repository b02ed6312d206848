import { describe, expect, test } from "vitest";
import { modelAdvice } from "../../src/answers/failure-pages/model-advice.ts";
import type { Verdict } from "../../src/answers/failures/verdict.ts";
import { side, verdict } from "../rooms/rows.ts";

const reasons = ["First of all.", "In planned services it had failed in 32 of 236 (14 %).", "Like with like 5.1 times as often."];
const clutch = (rest: Partial<Verdict> = {}) => verdict({ reasons, ...rest });
const seal = (rest: Partial<Verdict> = {}) => verdict({ position: "body_seal", position_name: "Body seal", reasons, ...rest });

describe("modelAdvice", () => {
  test("says yes with the part and how many times as often, why with counts, and what to do", () => {
    const { answer, advice, because, then } = modelAdvice("Whinbeck 40", [clutch(), seal({ word: "no different" })]);
    expect(answer).toBe("yes");
    expect(advice).toBe("Yes, warn customers. The one-way clutch of the Whinbeck 40 fails clearly more often than on other models: 5.1 times as often as on reels used alike.");
    expect(because).toEqual(reasons.slice(1));
    expect(then).toMatch(/^When a Whinbeck 40 comes in, look at the one-way clutch/);
  });

  test("names a second part that stands out with its own counts, and one that is doubtful as doubtful", () => {
    const { advice, because } = modelAdvice("M", [clutch(), seal(), verdict({ position: "bail", position_name: "Bail wire", word: "worse than most, not yet sure" })]);
    expect(advice).toMatch(/The one-way clutch and body seal of the M fail clearly/);
    expect(because.slice(-2)).toEqual(["Body seal: In planned services it had failed in 32 of 236 (14 %); on the other models in 34 of 1\u202f239 (3 %).", "Not yet sure: the bail wire."]);
  });

  test("says not yet of a part that is worse and not sure, and what would settle it", () => {
    const { answer, then } = modelAdvice("M", [clutch({ word: "worse than most, not yet sure" })]);
    expect(answer).toBe("not yet");
    expect(then).toContain("write down what you find, the sound ones too");
  });

  test("says no with how many parts were seen, and why the one that looks worst is not blamed", () => {
    const apart = clutch({ word: "cannot tell apart from how these reels come in", reasons: ["It looks worse, and that does not hold."] });
    const { answer, because } = modelAdvice("M", [apart, seal({ word: "no different", sides: [side(5, 200, [25, 1000], { p_value: 0.6 }), side(8, 300, [30, 1200], { opening: "*", p_value: 0.6 })] })]);
    expect(answer).toBe("no");
    expect(because[0]).toBe("Of the 2 parts seen often enough, 1 fails no more often than on other models. For the other one these records cannot tell a weak part from salt, care or the way these reels come in.");
    expect(because[1]).toBe("What looks worst is the one-way clutch. In planned services it had failed in 32 of 236 (14 %); on the other models in 34 of 1\u202f239 (3 %). It looks worse, and that does not hold.");
  });

  test("cannot say where most parts were seen too rarely, or nothing was seen at all", () => {
    expect(modelAdvice("M", [clutch({ word: "too few" }), seal({ word: "no different" })]).answer).toBe("cannot say");
    expect(modelAdvice("M", []).answer).toBe("cannot say");
  });
});
