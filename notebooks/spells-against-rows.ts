import { conditionFit, effectsOf } from "../src/answers/wear/effects.ts";
import { ALL_WEAR, wearRecords } from "../src/answers/wear/wear-records.ts";
import type { WearLine } from "../src/answers/wear/wear-records.ts";
import type { Engine } from "../src/db/engine.ts";
import { demoEngine } from "./demo-engine.ts";

/**
 * A part or a row? The line roller bearings of the invented demo shop, in three ways of counting (METHODS 0).
 *
 * The shop was made so that a day unrinsed wears like two, with a shape of 1.7. Run it with
 * `npm run notebook -- notebooks/spells-against-rows.ts`.
 */
const POSITION = "line_roller_bearing";

/** Every inspection for itself, as a spreadsheet has it: failed or not after the days written on the ticket. */
const ROWS = `-- Every inspection as a row of its own.
-- Columns: days double, failed boolean, rinse varchar, water varchar, tier varchar, sealed boolean, parts bigint
select v.salt_days as days, i.failed, v.rinse, v.water, v.tier, v.sealed, count(*) as parts
from inspected i
join visits v using (visit)
where i.position = '${POSITION}' and i.counted and v.salt_days > 0 and v.water is distinct from 'fresh'
group by all
order by all`;

type InspectionRow = { days: number; failed: boolean; rinse: string | null; water: string | null; tier: string | null; sealed: boolean | null; parts: number };

async function rowLines(engine: Engine): Promise<WearLine[]> {
  const rows = await engine.rows<InspectionRow>(ROWS);
  return rows.map(({ days, failed, ...row }) => ({ ...row, position: POSITION, low: failed ? 0 : days, high: failed ? days : null, maker: null, model: null, left_out: null, linked: 0, mates: 0 }));
}

const failedShare = (lines: readonly WearLine[], rinse: string) => {
  const some = lines.filter((line) => line.rinse === rinse), sum = (of: readonly WearLine[]) => of.reduce((total, { parts }) => total + parts, 0);
  return sum(some.filter(({ high }) => high !== null)) / sum(some);
};

function line(name: string, lines: readonly WearLine[]): string {
  const { fit, columns, status } = conditionFit(lines), never = effectsOf(lines, { fit, columns, status }, POSITION).find(({ level }) => level === "never")?.time_ratio;
  if (!fit || !never || never.value === null) return `| ${name} | no curve: ${status} | | |`;
  return `| ${name} | ${fit.n} | ${fit.shape.toFixed(2)} | ${never.value.toFixed(2)} (${never.low?.toFixed(2) ?? "open"} to ${never.high?.toFixed(2) ?? "open"}) |`;
}

export async function notebook(): Promise<string> {
  const engine = await demoEngine();
  try {
    const rows = await rowLines(engine), spells = async (first_sights: "planned" | "all") => (await wearRecords(engine, { ...ALL_WEAR, first_sights }, { position: POSITION, conditions: true })).lines;
    const raw = failedShare(rows, "never") / failedShare(rows, "always");
    return [
      "# A part, or a row?",
      "",
      `Line roller bearings, salt and brackish water. Share failed of reels never rinsed over that of reels always rinsed: ${raw.toFixed(2)}; that is what a pivot table shows.`,
      "",
      "| counted | of | shape | how many times as fast they wear when never rinsed |",
      "| --- | --- | --- | --- |",
      line("every inspection a row", rows),
      line("parts followed, whatever brought the reel in when they were first looked at", await spells("all")),
      line("parts followed, first looked at on planned work", await spells("planned")),
      "| how the shop was made | | 1.70 | 2.00 |",
      "",
      "A row knows only the days since the last service, but the part may be older: it was good at the service before and went on. So rows bend the",
      "shape down and the effect with it. A part that brings its reel in before anybody looked at it chose itself, and those that hold are not seen",
      "yet: counting it makes parts look worse than they are. Over a hundred invented shops (seeds 201 to 300) one in ten had failed by 11 to 12 days",
      "when only parts there before the reel's first visit were held to this, by 17.7 when every part is, and by 19 in truth; the 95 % limits of the",
      "unrinsed wear held 2.00 in 88 and in 94 of them. Standard errors that allow for several parts of one reel, or of reels that came together,",
      "were as wide (0.118 against 0.119) and held it in the same 94: they are not used.",
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
