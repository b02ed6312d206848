import { EVERYTHING } from "../src/answers/filter.ts";
import { failureRates } from "../src/answers/failures/failure-rates.ts";
import type { Opening } from "../src/answers/filter.ts";
import type { Engine } from "../src/db/engine.ts";
import { shareInterval } from "../src/stats/share-interval.ts";
import { demoEngine } from "./demo-engine.ts";

/**
 * Of how many? One part of the invented demo shop, counted over four denominators.
 *
 * The range is Wilson's interval (Wilson 1927, JASA 22:209). Run it with `npm run notebook -- notebooks/denominators.ts`.
 */
const POSITION = "line_roller_bearing";

const percent = (share: number) => `${(100 * share).toFixed(0)} %`;

function line(name: string, failed: number, of: number): string {
  const [low, high] = shareInterval(failed, of);
  return `| ${name} | ${failed} | ${of} | ${percent(failed / of)} | ${percent(low)} to ${percent(high)} |`;
}

async function counted(engine: Engine, opening: Opening, denominator: "coverage" | "strict") {
  const rows = await failureRates(engine, { ...EVERYTHING, opening, denominator, group: null, position: POSITION });
  const all = rows.find((row) => row.model === "*");
  if (!all) throw new RangeError(`denominators: needs a row for all models at ${POSITION}`);
  return all;
}

export async function notebook(): Promise<string> {
  const engine = await demoEngine();
  try {
    const counts = await engine.rows<{ tickets: number }>("-- How many tickets are there?\n-- Columns: tickets bigint\nselect count(*) as tickets from visits order by tickets");
    const any = await counted(engine, "*", "coverage"), strict = await counted(engine, "*", "strict");
    const planned = await counted(engine, "planned", "coverage"), complaint = await counted(engine, "complaint", "coverage");
    return [
      "# Of how many?",
      "",
      `How often does the ${any.position_name.toLowerCase()} fail? The failures are nearly the same in the first three lines; what they are divided by is not.`,
      "",
      "| divided by | failed | of | share | plausibly |",
      "| --- | --- | --- | --- | --- |",
      line("all tickets, most of which never opened it", any.failed, counts[0]?.tickets ?? 0),
      line("times something was written about it", strict.failed, strict.inspected),
      line("times the job opened it", any.failed, any.inspected),
      line("the same, planned services only", planned.failed, planned.inspected),
      line("the same, reels that came in with something wrong", complaint.failed, complaint.inspected),
      "",
      "All tickets are too many: a drag job does not look at the line roller. What was written is too little: what was fine is seldom",
      "written. The two last lines are why rates are shown apart: a reel that comes in with a squealing roller was chosen by its fault, so a",
      "year with more quick jobs looks like a year with worse bearings. The demo records are invented; the method is not.",
      "",
    ].join("\n");
  } finally {
    await engine.close();
  }
}

export async function main(): Promise<number> {
  process.stdout.write(`${await notebook()}\n`);
  return 0;
}
