import { sideOf, type Verdict } from "../../answers/failures/verdict.ts";
import { modelName } from "../../answers/model-name.ts";
import { count, number } from "../../ui/format.ts";
import { hashOf } from "../../ui/url-state.ts";
import type { Item, Part } from "./morning-items.ts";

/** Parts named on the sheet. */
const MOST_NAMED = 3;

function wary(verdict: Verdict, locale?: string): Item {
  const { failed, inspected, others_failed, others_inspected, adjusted } = sideOf(verdict, verdict.decided_on);
  const times = adjusted.value === null ? "" : `, ${number(adjusted.value, 1, locale)} times as often as on reels used alike`;
  return {
    before: `${modelName(verdict)}${verdict.series ? " (all sizes)" : ""}: ${verdict.position_name.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase())} had failed in `,
    figure: `${number(failed, 0, locale)} of ${number(inspected, 0, locale)}`,
    href: hashOf({ slug: "failures", query: new URLSearchParams(verdict.series ? { position: verdict.position } : { model: modelName(verdict) }).toString() }),
    after: ` planned services, on the other models in ${number(others_failed, 0, locale)} of ${number(others_inspected, 0, locale)}${times}.`, why: "",
  };
}

/** Models to warn customers of: only parts that stand out, the worst first; what is not yet sure is counted. */
export function waryPart(verdicts: readonly Verdict[], locale?: string): Part {
  const out = verdicts.filter(({ word }) => word === "stands out"), unsure = verdicts.filter(({ word }) => word === "worse than most, not yet sure").length;
  const rest = [out.length > MOST_NAMED ? `${number(out.length - MOST_NAMED, 0, locale)} more` : "", unsure > 0 ? `${count(unsure, "part", "parts", locale)} not yet sure` : ""].filter((word) => word !== "");
  return {
    title: "Warn customers", to_do: false, items: out.slice(0, MOST_NAMED).map((one) => wary(one, locale)),
    nothing: "No part of any model fails clearly more often than on the others.",
    more: { words: `Reels to be wary of, on Failures${rest.length > 0 ? `: ${rest.join(", ")}` : ""}`, href: "#/failures" },
  };
}
