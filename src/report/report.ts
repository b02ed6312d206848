import { recordsSpan } from "../answers/choices/choices.ts";
import { comebacks } from "../answers/comebacks/comebacks.ts";
import { ALL_VERDICTS, failureVerdicts } from "../answers/failures/failure-verdicts.ts";
import { DENOMINATORS, EVERYTHING } from "../answers/filter.ts";
import { labour } from "../answers/labour/labour.ts";
import { lots } from "../answers/lots/lots.ts";
import { morning } from "../answers/morning/morning.ts";
import { prepareAnswers } from "../answers/prepare.ts";
import type { Engine } from "../db/engine.ts";
import { openNodeEngine } from "../db/open-node.ts";
import { prepareSchema } from "../db/prepare.ts";
import { importFiles } from "../records/importing.ts";
import type { Imported } from "../records/importing.ts";
import { openMemoryLedger } from "../records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../records/load-vocabulary.ts";
import { conflicts } from "../records/merging/conflicts.ts";
import { respeltNumbers } from "../records/merging/respelt.ts";
import type { NamedFile } from "../records/reading/read-file.ts";
import { comebackTables } from "./comeback-tables.ts";
import { failureTable } from "./failure-table.ts";
import { labourTable } from "./labour-table.ts";
import { lotTable } from "./lot-table.ts";
import { rejectedTable } from "./rejected-table.ts";
import { restockTable } from "./restock-table.ts";
import { seasonTables } from "./season-tables.ts";
import { stockTables } from "./stock-tables.ts";
import { summary } from "./summary.ts";
import { tableText } from "./table.ts";
import type { ReportTable } from "./table.ts";
import { verdictTable } from "./verdict-table.ts";
import { wearTables } from "./wear-tables.ts";

export interface ReportSettings {
  /** Day the advice is for; null: the newest day in the records. */
  readonly as_of: string | null;
  /** Dates up to a year from it are believed. */
  readonly today: string;
}

/** The report's files by name, and what came in; or the sentence why there is none. */
export type Report = { readonly files: ReadonlyMap<string, string>; readonly tickets: number; readonly rejects: number; readonly conflicts: number };
export type NoReport = { readonly nothing: string };

/** Everything about failures: rates, verdicts, comebacks, lots. */
async function failureTables(engine: Engine): Promise<readonly ReportTable[]> {
  const verdicts = [];
  for (const denominator of DENOMINATORS) verdicts.push(...await failureVerdicts(engine, { ...ALL_VERDICTS, denominator }, undefined, { drawn: "all" }));
  const back = await comebacks(engine, { ...EVERYTHING, group: null, position: null, watched_until: "records end", curves: true });
  return [await failureTable(engine, verdicts), verdictTable(verdicts), ...comebackTables(back), lotTable(await lots(engine))];
}

/** The report's files on what the engine was filled with. */
export async function reportTables(engine: Engine, { files: read, rejects }: Imported, settings: ReportSettings): Promise<Report> {
  const span = await recordsSpan(engine), as_of = settings.as_of ?? span.latest ?? settings.today;
  const sheet = await morning(engine, { as_of, rows_to_fix: rejects.length });
  const in_conflict = await conflicts(engine);
  const times = await labour(engine, EVERYTHING), failures = await failureTables(engine);
  const facts = summary({
    morning: sheet, as_of_from: settings.as_of !== null ? "asked for" : span.latest !== null ? "the newest day in the records" : "today, no ticket being there",
    files: read, rejects, conflicts: in_conflict, respelt: await respeltNumbers(engine), labour_tickets: times.tickets, labour_set_aside: times.set_aside.length,
  });
  const csv = [...await wearTables(engine), rejectedTable(rejects), ...failures, restockTable(sheet.restock), ...await stockTables(engine, as_of), labourTable(times), ...await seasonTables(engine, as_of)];
  return {
    files: new Map([...csv.map((table) => [table.file, tableText(table)] as const), ["summary.json", `${JSON.stringify(facts, null, 2)}\n`]]),
    tickets: span.tickets, rejects: rejects.length, conflicts: in_conflict.length,
  };
}

/** Why nothing came of these files; null when something did. */
function nothingRead({ files }: Imported): string | null {
  if (files.some((file) => file.rows_read > 0)) return null;
  const reasons = files.map(({ file, unreadable }) => `${file}: ${unreadable ?? "no rows in it"}`);
  return `Nothing to read. ${reasons.join(" ")}`;
}

/** Fills the engine with these files and nothing else, through the same importer as the screens. */
export async function taken(engine: Engine, files: readonly NamedFile[], { today }: Pick<ReportSettings, "today">): Promise<Imported | NoReport> {
  await prepareSchema(engine);
  await loadVocabulary(engine);
  const found = await importFiles(files, { engine, ledger: openMemoryLedger(), today, origin: "files" }), nothing = nothingRead(found);
  if (nothing !== null) return { nothing };
  await prepareAnswers(engine);
  return found;
}

/**
 * Everything the report says of these files, from the same importer and the same answers as the screens.
 *
 * @returns `nothing` with one sentence when no file could be read or none holds a row
 */
export async function report(files: readonly NamedFile[], settings: ReportSettings): Promise<Report | NoReport> {
  const engine = await openNodeEngine();
  try {
    const found = await taken(engine, files, settings);
    return "nothing" in found ? found : await reportTables(engine, found, settings);
  } finally {
    await engine.close();
  }
}
