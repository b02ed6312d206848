import { NO_CHANGE, type WhatIf } from "../../answers/bench-load/what-if.ts";
import { dayAfter } from "../../answers/days.ts";
import { day, oneOf, text, type Values } from "../../ui/url-state.ts";

const HOURS = ["5", "10", "20"], WEEKS = ["2", "4", "8", "12"], LEAD = ["7", "14", "21", "35"];
/** Choices of the what-ifs with their words. */
export const OFFERS = [["10", "1 in 10"], ["20", "2 in 10"], ["30", "3 in 10"], ["50", "half"]].map(([value = "", label = ""]) => ({ value, label }));
export const HELP_HOURS = HOURS.map((value) => ({ value, label: `${value} hours a week` }));
export const HELP_WEEKS = WEEKS.map((value) => ({ value, label: `for ${value} weeks` }));
export const ORDER_LEAD = LEAD.map((value) => ({ value, label: `there after ${value} days` }));

/** What the room keeps in the address: the job at the counter, and what is tried. */
export const SEASON_FIELDS = {
  job: text(), offer: oneOf(["", ...OFFERS.map(({ value }) => value)], ""), help: day(), help_hours: oneOf(HOURS, "10"), help_weeks: oneOf(WEEKS, "4"),
  closed: day(), order: day(), order_days: oneOf(LEAD, "21"),
};
export type SeasonFields = typeof SEASON_FIELDS;
export type SeasonValues = Values<SeasonFields>;

/** The change to try; null while nothing is chosen. */
export function whatIfOf(values: SeasonValues): WhatIf | null {
  const { offer, help, closed, order } = values;
  if (offer === "" && help === "" && closed === "" && order === "") return null;
  return {
    ...NO_CHANGE, offer_share: offer === "" ? null : Number(offer) / 100,
    help: help === "" ? null : { from: help, to: dayAfter(help, 7 * Number(values.help_weeks) - 1), hours_a_week: Number(values.help_hours) },
    closed: closed === "" ? null : { from: closed, to: dayAfter(closed, 6) },
    order: order === "" ? null : { on: order, days: Number(values.order_days) },
  };
}
