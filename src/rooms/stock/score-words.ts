import type { PolicyScore, Replay, Spread } from "../../answers/replay/replay.ts";
import { count, date, DASH, number } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";

const right = { align: "right" } as const;
const spread = (value: Spread | null, say: (figure: number) => string): string =>
  (value === null ? DASH : say(value.low) === say(value.high) ? say(value.mean) : `${say(value.mean)} (${say(value.low)} to ${say(value.high)})`);

/** The time replayed, and on how many draws. */
export const replayedWords = ({ from, to, groups, draws }: Replay, locale?: string): string =>
  `${date(from, locale)} to ${date(to, locale)}, ${count(groups, "part", "parts", locale)}, ${number(draws, 0, locale)} draws of how long deliveries take; in brackets what eight draws in ten lie between; dead is what two years would not use.`;

const policy: Column<PolicyScore> = { key: "policy", label: "Way of ordering", wide: true, value: (one) => one.policy };
const waited: Column<PolicyScore> = { key: "waited", label: "Jobs that waited", ...right, value: (one) => one.waited?.mean ?? null, text: (one) => spread(one.waited, (figure) => number(figure)) };
const shelf = (currency: string): Column<PolicyScore> =>
  ({ key: "stock", label: "On the shelf", unit: `${currency} on average`.trim(), ...right, value: (one) => one.stock_value_mean?.mean ?? null, text: (one) => spread(one.stock_value_mean, (figure) => number(figure)) });
const sum = (key: "orders" | "spend" | "carriage" | "dead_stock", label: string, unit: string): Column<PolicyScore> =>
  ({ key, label, ...(unit === "" ? {} : { unit }), ...right, value: (one) => one[key], text: (one) => number(one[key]) });

/** The two figures of the picture. */
export const pictureColumns = (currency: string): readonly Column<PolicyScore>[] => [policy, waited, shelf(currency)];

/** Every way of ordering with what came of it. */
export const scoreColumns = (currency: string): readonly Column<PolicyScore>[] => [
  policy, waited,
  { key: "jobs_without_wait", label: "Straight through", ...right, value: (one) => one.jobs_without_wait, text: (one) => (one.waited === null ? DASH : `${number(one.jobs - Math.round(one.waited.mean))} of ${number(one.jobs)}`) },
  { key: "wait_days", label: "Wait", unit: "days", ...right, value: (one) => one.wait_days, text: (one) => number(one.wait_days) },
  shelf(currency), sum("orders", "Orders", ""), sum("spend", "Spent", currency), sum("carriage", "Carriage", currency), sum("dead_stock", "Dead at the end", currency),
];
