import Papa from "papaparse";
import { parts } from "./days.ts";
import type { Day } from "./days.ts";
import type { Draws } from "./random.ts";
import type { Model, Rinse, Water } from "./settings.ts";
import namesCsv from "./settings/names.csv?raw";

const NAMES = Papa.parse<{ model: string; written: string }>(namesCsv, { header: true, skipEmptyLines: true }).data;

/** Day, month, year without saying so. */
export function writtenDay(day: Day): string {
  const { year, month, date } = parts(day);
  return `${date}/${month}/${year}`;
}

/** The reel as it was scribbled: 22 in 100 misspelt, 6 in 100 without a size. */
export function writtenReel(model: Model, draw: Draws): string {
  const right = `${model.maker} ${model.model}`, chance = draw.uniform();
  if (chance < 0.06) return draw.pick([right.replace(/ \d\S*$/, ""), model.model.replace(/ \d\S*$/, "")]);
  return chance < 0.28 ? draw.pick(NAMES.filter((name) => name.model === model.code)).written : right;
}

export function writtenWater(water: Water, draw: Draws): string {
  const chance = draw.uniform();
  if (chance < 0.25) return chance < 0.12 ? "" : chance < 0.21 ? "both" : "sea+lake";
  return draw.pick({ salt: ["sea", "salt", "S"], brackish: ["estuary", "brackish"], fresh: ["lake", "fresh", "river"] }[water]);
}

const HEAPS = [5, 10, 15, 20, 30, 50, 100];

/** The customer's guess at the days in salt, heaped on round numbers; 35 in 100 never asked. */
export function guessedDays(true_days: number, draw: Draws): string {
  if (draw.chance(0.35)) return "";
  const guess = true_days * draw.logNormal(1, 0.4);
  if (guess < 1) return "0";
  return String(HEAPS.reduce((best, heap) => (Math.abs(Math.log(heap / guess)) < Math.abs(Math.log(best / guess)) ? heap : best), 5));
}

/** What the customer owns up to: 22 in 100 who never rinse say sometimes, 8 in 100 say always. */
export function admittedRinse(rinse: Rinse, draw: Draws): string {
  if (draw.chance(0.18)) return draw.pick(["", "?"]);
  const chance = draw.uniform(), said = rinse !== "never" ? rinse : chance < 0.22 ? "sometimes" : chance < 0.3 ? "always" : "never";
  return { always: "y", sometimes: "smtimes", never: "n" }[said];
}

/** The minutes as written: blank, in hours, or with the waiting in them. */
export function writtenTime(minutes: number | null, draw: Draws): string {
  if (minutes === null) return "";
  const chance = draw.uniform();
  if (chance < 0.14) return "";
  if (chance < 0.19) return String(minutes + 480 * (2 + draw.below(4)));
  if (chance >= 0.28) return String(minutes);
  const hours = Math.floor(minutes / 60), rest = String(minutes % 60).padStart(2, "0");
  return draw.pick([`${hours}h${rest}`, `${hours}:${rest}`, (minutes / 60).toFixed(2)]);
}
