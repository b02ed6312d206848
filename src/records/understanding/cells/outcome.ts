import { table } from "../../columns.ts";
import { wordCell } from "../../checking/word-cell.ts";
import { plainWords } from "../../vocabulary.ts";

const COLUMN = table("tickets").columns.find(({ name }) => name === "outcome");
const SAID: readonly (readonly [string, RegExp])[] = [
  ["waiting", /\b(?:wait|waiting|awaiting|on order|ordered|in progress|open|bench)\b/],
  ["beyond repair", /\b(?:ber|scrap|scrapped|beyond|write off|written off|parts reel)\b/],
  ["abandoned", /\babandoned\b|\bnever collected\b/],
  ["returned", /\b(?:ready|collected|returned|done|finished|posted|sent back|picked up|complete|completed|delivered)\b/],
];

/** How a job ended, from a status in words; null when the words tell nothing that we keep (`quote sent`). */
export function outcomeSaid(text: string): string | null {
  const exact = COLUMN ? wordCell(text, COLUMN) : null;
  if (typeof exact === "string") return exact;
  return SAID.find(([, pattern]) => pattern.test(plainWords(text)))?.[0] ?? null;
}
