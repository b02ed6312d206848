import { jobName } from "../../answers/labour/job-name.ts";
import type { LabourTimes } from "../../answers/labour/labour-page.ts";
import type { RecordsFilter } from "../../answers/filter.ts";
import { REEL_KINDS } from "../../records/columns.ts";
import { day, oneOf, text, type Values } from "../../ui/url-state.ts";
import { wholeJobs } from "./labour-words.ts";
import type { MinutesLine } from "./minutes-chart.ts";

/** Filters of the room as they stand in the address; `job` is the one looked at, `reel` the model it is quoted for. */
export const LABOUR_FIELDS = { kind: oneOf(["", ...REEL_KINDS], ""), from: day(), to: day(), job: text(), reel: text() };

const given = (value: string) => (value === "" ? null : value);

/** The records a question looks at. */
export const labourFilter = (values: Values<typeof LABOUR_FIELDS>): RecordsFilter =>
  ({ reel_kind: given(values.kind), maker: null, model: null, water: null, from: given(values.from), to: given(values.to) });

/** Fewest jobs that are drawn, and most lines in one picture. */
const FEWEST_DRAWN = 5, MOST_DRAWN = 20;

/** Lines of the strip chart, in the order of the table. */
export function minutesLines({ labour: { rows }, ticks }: Pick<LabourTimes, "labour" | "ticks">): readonly MinutesLine[] {
  const by_name = new Map(ticks.map((one) => [jobName(one), one.ticks]));
  return wholeJobs(rows).filter((row) => row.n >= FEWEST_DRAWN).slice(0, MOST_DRAWN)
    .map((row) => ({ name: jobName(row), n: row.n, ticks: by_name.get(jobName(row)) ?? [], median: row.median, p80: row.p80 }));
}
