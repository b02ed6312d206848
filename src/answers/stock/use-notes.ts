import { MONTH_DAYS } from "../days.ts";
import type { Route } from "../demand/routes.ts";
import { number } from "../wording.ts";
import type { GroupFacts } from "./group-facts.ts";
import type { RestockLine } from "./restock-line.ts";

const HOW: Readonly<Record<Route, string>> = {
  steady: "its use over whole years", seldom: "how often it is used and how many at once",
  "seldom, corrected": "how often it is used and how many at once, drawn a little down", fading: "its use with the newest weeks counting most",
  "from reels": "the reels to come and what each of them takes",
};
/** A use that fell under this share of what it was is called dying. */
const DYING = 0.25;

const a_month = (a_day: number): string => number(a_day * MONTH_DAYS);

function changeNote({ outlook: { change } }: GroupFacts, { changed_on }: Pick<RestockLine, "changed_on">): string[] {
  if (change === null || changed_on === null) return [];
  if (change.is === 0) return [`Not used since about ${changed_on.slice(0, 7)}, ${a_month(change.was)} a month before: it is dying out.`];
  const dying = change.is < DYING * change.was ? " It is dying out: buy only what waiting jobs need." : "";
  return [`Use changed about ${changed_on.slice(0, 7)}: ${a_month(change.is)} a month since, ${a_month(change.was)} before; planned on the time since.${dying}`];
}

function habitNote({ outlook: { ruled_days } }: GroupFacts): string[] {
  return ruled_days === null ? [] : [`Planned on the ${number(ruled_days)} days since your change of habit.`];
}

function routeNote({ outlook: { choice } }: GroupFacts): string[] {
  if (choice.looks === 0) return [];
  const how = choice.routes.map((route) => HOW[route]).join(", and from ");
  return [`The use ahead is told from ${how}${choice.routes.length > 1 ? ", the mean of both" : ""}: that came nearest in ${number(choice.looks)} looks back.`];
}

/** Where the expected use comes from, and what changed. */
export function useNotes(facts: GroupFacts, line: Pick<RestockLine, "changed_on" | "used">): string[] {
  return [...changeNote(facts, line), ...habitNote(facts), ...(line.used > 0 ? routeNote(facts) : [])];
}
