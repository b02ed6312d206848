import type { Merge } from "../../records/merging/names.ts";
import type { CountedModel, Proposal } from "../../records/merging/propose-merges.ts";
import { count } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";

/** A name as the owner knows it, with how many tickets bear it. */
export const named = ({ maker, model }: Pick<CountedModel, "maker" | "model">): string => [maker, model].filter((part) => part !== null).join(" ");
const tickets = (one: CountedModel): string => `${named(one)}, ${one.n === 0 ? "on no ticket" : count(one.n, "ticket", "tickets")}`;

const SURE: Readonly<Record<Proposal["confidence"], string>> = { sure: "certain", likely: "likely", "a guess": "a guess" };

const BOTH: readonly Column<Proposal>[] = [
  { key: "from", label: "Written", value: ({ from }) => named(from), text: ({ from }) => tickets(from) },
  { key: "to", label: "Counts as", value: ({ to }) => named(to), text: ({ to }) => tickets(to) },
  { key: "reason", label: "Why", wide: true, value: ({ reason }) => reason },
];

export const PROPOSED: readonly Column<Proposal>[] = [
  ...BOTH,
  { key: "sure", label: "How sure", value: ({ confidence }) => SURE[confidence] },
  { key: "do", label: "Your word", sortable: false, value: () => null },
];

export const MERGED: readonly Column<Merge>[] = [
  ...BOTH as readonly Column<Merge>[],
  { key: "by", label: "Decided", value: ({ by }) => (by === "you" ? "by you" : "by itself") },
  { key: "do", label: "Undo", sortable: false, value: () => null },
];

export const APART: readonly Column<CountedModel>[] = [
  { key: "name", label: "Stays itself", value: (one) => named(one), text: (one) => tickets(one) },
  { key: "do", label: "Undo", sortable: false, value: () => null },
];
