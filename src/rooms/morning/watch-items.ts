import { sideOf, type Verdict } from "../../answers/failures/verdict.ts";
import type { LotRow } from "../../answers/lots/lot.ts";
import { modelName } from "../../answers/model-name.ts";
import type { Look } from "../../answers/morning/last-look.ts";
import { watchedNames, type Watch } from "../../answers/morning/worth-watching.ts";
import { count, date, number } from "../../ui/format.ts";
import { listChanges } from "./change-words.ts";
import { linkTo, type Item, type Part } from "./sheet-part.ts";

/** Parts and lots named on the sheet. */
const MOST_NAMED = 3, MOST_LOTS = 2;

const of = (failed: number, all: number, locale?: string): string => `${number(failed, 0, locale)} of ${number(all, 0, locale)}`;
const inSentence = (name: string): string => name.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase());

function wary(verdict: Verdict, locale?: string): Item {
  const { failed, inspected, others_failed, others_inspected, adjusted } = sideOf(verdict, verdict.decided_on);
  const times = adjusted.value === null ? "" : `, ${number(adjusted.value, 1, locale)} times as often as on reels used alike`, { position } = verdict;
  return {
    before: `${modelName(verdict)}${verdict.series ? " (all sizes)" : ""}: ${inSentence(verdict.position_name)} had failed in `, figure: of(failed, inspected, locale),
    href: linkTo("failures", verdict.series ? { position, series: modelName(verdict) } : { position, model: modelName(verdict) }),
    after: ` ${verdict.decided_on === "planned" ? "planned services" : "openings"}, on the other models in ${of(others_failed, others_inspected, locale)}${times}.`, why: "",
  };
}

function lotItem({ size_or_part, supplier, from, to, failed_early, fitted, verdict, carriers }: LotRow, locale?: string): Item {
  const reels = new Set(carriers.map(({ serial, model }) => `${model} ${serial}`)).size, position = carriers[0]?.position;
  return {
    before: `${size_or_part}${supplier === null ? "" : ` from ${supplier}`}, fitted ${date(from, locale)} to ${date(to, locale)}: `, figure: of(failed_early, fitted, locale),
    href: linkTo("failures", position === undefined ? {} : { position }),
    after: ` failed early, ${verdict}${reels === 0 ? "" : `; ${count(reels, "reel still carries", "reels still carry", locale)} one`}.`, why: "",
  };
}

function comebackItem({ comeback, within_days }: Watch, locale?: string): Item[] {
  if (comeback === null) return [];
  return [{
    before: `Comebacks cost most at the ${inSentence(comeback.position_name)}: `, figure: of(comeback.back, comeback.failures, locale), href: linkTo("failures", { position: comeback.position }),
    after: ` put right had failed again within ${number(within_days, 0, locale)} days.`, why: "",
  }];
}

/** What stood on the last sheet comes after what is new. */
function newFirst(out: readonly Verdict[], before: Look | null): readonly Verdict[] {
  const known = new Set(before?.figures.watch.map(({ key }) => key)), isNew = (one: Verdict) => before !== null && watchedNames({ out: [one], lots: [] }).some(({ key }) => !known.has(key));
  return [...out].sort((a, b) => Number(isNew(b)) - Number(isNew(a)));
}

/** Models to warn customers of, lots to call in and comebacks: only what stands out, the worst first; what is not yet sure is counted. */
export function watchPart(watch: Watch, before: Look | null, locale?: string): Part {
  const { out, unsure, lots } = watch, rest = out.length - MOST_NAMED;
  const more = [rest > 0 ? `${number(rest, 0, locale)} more` : "", unsure > 0 ? `${count(unsure, "part", "parts", locale)} not yet sure` : ""].filter((word) => word !== "");
  return {
    title: "Watch", to_do: false, changed: listChanges(before?.figures.watch ?? null, watchedNames(watch), "no longer standing out", locale),
    items: [...newFirst(out, before).slice(0, MOST_NAMED).map((one) => wary(one, locale)), ...lots.slice(0, MOST_LOTS).map((one) => lotItem(one, locale)), ...comebackItem(watch, locale)],
    nothing: "No part of any model fails clearly more often than on the others, no lot fails early, and none came back.",
    more: { words: `Reels to be wary of, on Failures${more.length > 0 ? `: ${more.join(", ")}` : ""}`, href: linkTo("failures") },
  };
}
