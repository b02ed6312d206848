import type { ComebackRow } from "../../answers/comebacks/comeback.ts";
import { modelName } from "../../answers/model-name.ts";
import { FEWEST_FOR_PERCENT, DASH, minutes, money, number } from "../../ui/format.ts";
import { likely } from "../../ui/share-words.ts";
import type { Column } from "../../ui/table-rows.ts";
import { ofWords } from "./verdict-words.ts";

const TRENDS: Readonly<Record<ComebackRow["trend"]["word"], string>> = {
  "faster with age": "more often the older the reel", "slower with age": "less often the older the reel", "no trend": "at an even pace", "too few": "too few to say",
};

/** How often a failure that was put right came back, in a sentence. */
export function comebackSentence({ back, failures, share, trend }: ComebackRow, within_days: number): string {
  if (failures === 0) return "No failure of it on a reel with a serial number has been put right here long enough ago to say whether it comes back.";
  const range = failures < FEWEST_FOR_PERCENT || share.low === null ? "too few for a share" : `likely ${likely(share.low, share.high)}`;
  const pace = trend.word === "too few" ? "" : ` On one reel it fails ${TRENDS[trend.word]}.`;
  return `Of ${number(failures)} failures put right on reels with a serial number, ${number(back)} had failed again within ${number(within_days)} days (${range}).${pace}`;
}

/** Columns of the comebacks; `all` is the name of the row over all models; `by_part` heads the rows by their part. */
export function comebackColumns(all: string, currency: string, by_part = false): readonly Column<ComebackRow>[] {
  const right = { align: "right" } as const;
  return [
    by_part ? { key: "part", label: "Part", value: (row) => row.position_name } : { key: "model", label: "Model", value: (row) => (row.model === "*" ? all : modelName(row)) },
    { key: "reels", label: "Reels watched", ...right, value: (row) => row.reels, text: (row) => number(row.reels) },
    { key: "back", label: "Came back", ...right, value: (row) => row.back, text: (row) => ofWords(row.back, row.failures) },
    { key: "likely", label: "Likely", value: (row) => row.share.low, text: (row) => (row.share.value === null ? DASH : likely(row.share.low, row.share.high)) },
    { key: "trend", label: "Fails on one reel", wide: true, value: (row) => TRENDS[row.trend.word] },
    { key: "minutes", label: "Minutes of comebacks", ...right, value: (row) => row.minutes, text: (row) => minutes(row.minutes) },
    { key: "parts", label: "Parts", ...right, value: (row) => row.parts, text: (row) => money(row.parts, currency) },
  ];
}
