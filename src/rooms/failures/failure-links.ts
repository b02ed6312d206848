import { hashOf, queryOf } from "../../ui/url-state.ts";
import { FAILURE_FIELDS, type FailureValues } from "./failure-filters.ts";

/** Which page of the room the address asks for. */
export type FailurePage = "overview" | "part" | "model" | "part on model" | "two models" | "series" | "part on series" | "evidence";

/** A series goes before a model; both chosen and the sheet asked for: the sheet; a second model: the two beside each other; else what was chosen. */
export function pageOf({ position, model, series, other, sheet }: Pick<FailureValues, "position" | "model" | "series" | "other" | "sheet">): FailurePage {
  if (series !== "") return position === "" ? "series" : sheet === "evidence" ? "evidence" : "part on series";
  if (position !== "" && model !== "") return sheet === "evidence" ? "evidence" : "part on model";
  if (model !== "" && other !== "" && other !== model) return "two models";
  return position !== "" ? "part" : model !== "" ? "model" : "overview";
}

/** The address of another page under the same filters; what is not named in `to` is not chosen there. */
export function linkTo(values: FailureValues, to: Partial<Pick<FailureValues, "position" | "model" | "series" | "other" | "sheet">>): string {
  return hashOf({ slug: "failures", query: queryOf(FAILURE_FIELDS, { ...values, position: "", model: "", series: "", other: "", sheet: "", found: "failed", ...to }) });
}
