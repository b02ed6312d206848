import type { LastBuy } from "../../answers/stock/last-buy.ts";
import type { DeadLine } from "../../answers/stock/shelf-money.ts";
import type { SharedPart } from "../../answers/stock/stock-room.ts";
import { money, number, share } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";
import { coverWords, lineName } from "./stock-words.ts";

const right = { align: "right" } as const;

/** Money asleep on the shelf. */
export const deadColumns = (currency: string): readonly Column<DeadLine>[] => [
  { key: "name", label: "Part", wide: true, value: ({ line }) => lineName(line) },
  { key: "on_hand", label: "On hand", ...right, value: ({ line }) => line.on_hand, text: ({ line }) => number(line.on_hand) },
  { key: "used", label: "Used", ...right, value: ({ line }) => line.used, text: ({ line }) => number(line.used) },
  { key: "cover_years", label: "Lasts", value: ({ line }) => line.cover_years, text: ({ line }) => coverWords(line) },
  { key: "value", label: "On the shelf", ...right, value: (one) => one.value, text: (one) => money(one.value, currency, 0) },
  { key: "spare", label: "Could go", unit: "pieces", ...right, value: (one) => one.spare, text: (one) => number(one.spare) },
  { key: "why", label: "Why", wide: true, sortable: false, value: (one) => one.sentence },
];

/** Parts of models that are no longer made. */
export const lastBuyColumns: readonly Column<LastBuy>[] = [
  { key: "name", label: "Part", wide: true, value: ({ line }) => lineName(line) },
  { key: "qty", label: "Buy", unit: "pieces", ...right, value: (one) => one.qty, text: (one) => number(one.qty) },
  { key: "why", label: "Why", wide: true, sortable: false, value: (one) => one.sentence },
];

/** Parts that several models take. */
export const SHARED_COLUMNS: readonly Column<SharedPart>[] = [
  { key: "name", label: "Part", wide: true, value: ({ line }) => lineName(line) },
  { key: "models", label: "Models", ...right, value: ({ demand }) => demand.models },
  { key: "pieces", label: "Used", unit: "in two years", ...right, value: ({ demand }) => demand.pieces, text: ({ demand }) => number(demand.pieces) },
  { key: "top", label: "Most go into", value: ({ demand }) => demand.top_model,
    text: ({ demand }) => `${demand.top_model}, ${share(Math.round(demand.top_model_share * demand.pieces), demand.pieces)}` },
];
