import type { BesideElsewhere } from "../../answers/elsewhere/beside-elsewhere.ts";
import type { Elsewhere } from "../../answers/elsewhere/elsewhere.ts";
import type { Opening } from "../../answers/filter.ts";
import { count, date, DASH } from "../../ui/format.ts";
import { likely } from "../../ui/share-words.ts";
import type { Column } from "../../ui/table-rows.ts";
import { inSentence, ofWords } from "./verdict-words.ts";

const right = { align: "right" } as const;
const CAME: Readonly<Record<Opening, string>> = { planned: "at planned services", complaint: "on reels that came in with something wrong", "*": "however the reel came in" };

/** A part here and elsewhere, side by side. */
export const ELSEWHERE_COLUMNS: readonly Column<BesideElsewhere>[] = [
  { key: "part", label: "Part", value: (row) => row.position_name },
  { key: "here", label: "Here", ...right, value: (row) => row.failed, text: (row) => ofWords(row.failed, row.inspected) },
  { key: "likely", label: "Likely", value: (row) => row.rate.low, text: (row) => (row.rate.value === null ? DASH : likely(row.rate.low, row.rate.high)) },
  { key: "there", label: "Elsewhere", ...right, value: (row) => row.elsewhere_failed, text: (row) => ofWords(row.elsewhere_failed, row.elsewhere_inspected) },
  { key: "likely there", label: "Likely", value: (row) => row.elsewhere_rate.low, text: (row) => (row.elsewhere_rate.value === null ? DASH : likely(row.elsewhere_rate.low, row.elsewhere_rate.high)) },
  { key: "shops", label: "Shops", ...right, value: (row) => row.shops },
  { key: "word", label: "Beside them", value: (row) => row.word },
];

/** What other shops say of a model, in a sentence or two. */
export function elsewhereSentence(rows: readonly BesideElsewhere[], name: string, opening: Opening): string {
  if (rows.length === 0) return `The other shops’ counts hold no part of ${name} that was looked at here, ${CAME[opening]}.`;
  const [first] = rows, plain = first ? `${first.position_name}, ${CAME[opening]}: here ${ofWords(first.failed, first.inspected)}; elsewhere ${ofWords(first.elsewhere_failed, first.elsewhere_inspected)} in ${count(first.shops, "shop", "shops")}.` : "";
  const named = (word: BesideElsewhere["word"]) => rows.filter((row) => row.word === word).map((row) => inSentence(row.position_name)).join(", ");
  const more = named("more often here"), less = named("less often here");
  return [plain, more === "" ? "" : `Fails more often here: ${more}.`, less === "" ? "" : `Fails less often here: ${less}.`, more === "" && less === "" ? "No part differs clearly from the other shops." : ""].filter((part) => part !== "").join(" ");
}

/** What was taken in. */
export function takenWords({ shops, rows, taken_on }: Elsewhere): string {
  const all = rows.filter(({ opening }) => opening === "*"), models = new Set(all.map(({ maker, model }) => JSON.stringify([maker, model]))).size;
  return `Counts of ${count(shops, "shop", "shops")} on ${count(models, "model", "models")}, taken in on ${date(taken_on)}. A model’s page shows them beside yours.`;
}
