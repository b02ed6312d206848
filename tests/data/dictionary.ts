import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Column, Kind } from "../../src/records/columns.ts";

const TYPES: Readonly<Record<Kind, string>> = {
  text: "text", date: "date", number: "number", whole: "whole number", yes_no: "yes or no", one_of: "one of", position: "position", mode: "mode", money: "money",
};

/** A column's type as the dictionary writes it. */
export const typeWords = ({ kind }: Column): string => TYPES[kind];

/** What a column allows, as the dictionary writes it: words, or from where to where. */
export function allowedWords({ kind, words, min, max, above }: Column): string {
  if (words) return words.join(", ");
  if (kind === "yes_no") return "yes, no";
  if (kind === "date") return "1950 to a year from today";
  if (kind === "position") return "`vocabulary/positions.csv`";
  if (kind === "mode") return "`vocabulary/modes.csv`";
  const least = above !== undefined ? `over ${above}` : min === undefined ? "" : max === undefined ? `from ${min}` : `${min}`;
  return [least, max === undefined ? "" : `to ${max}`].filter((part) => part !== "").join(" ");
}

/** Tables of a file of ours under its headings of third rank: the cells of each row, without heads. */
export function tablesOf(file: string): ReadonlyMap<string, readonly (readonly string[])[]> {
  const sections = readFileSync(resolve(import.meta.dirname, "../../data", file), "utf8").split(/^(?=##)/m).filter((section) => section.startsWith("### "));
  return new Map(sections.map((section) => {
    const [heading = "", ...lines] = section.slice(4).split("\n"), rows = lines.filter((line) => line.startsWith("|")).slice(2);
    return [heading.trim().split(/[ ,:]/)[0] ?? "", rows.map((line) => line.split("|").slice(1, -1).map((cell) => cell.trim()))] as const;
  }));
}
