import type { Behind, NumberAsked } from "../../answers/behind/behind.ts";
import type { Source, ThingCounted } from "../../answers/behind/things.ts";
import { grouped } from "../../answers/grouped.ts";
import { CLOCK_WORDS } from "../../answers/wear/wear-words.ts";
import { csv } from "../../ui/csv.ts";
import { count, DASH, date, money, number } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";
import { named } from "./merges-rows.ts";
import { placeName } from "./number-asked.ts";

type Of = NumberAsked["of"];

/** What a hit is, and what else counts; "" says that nothing sets a thing apart. */
const HITS: Readonly<Record<Of, readonly [hit: string, other: string]>> = {
  inspections: ["failed", "not failed"], comebacks: ["came back", "did not come back"], parts: ["failed", "still good"],
  pieces: ["wanted", "used"], jobs: ["paid", "not charged"], reels: ["finished", "not finished"],
};

/** How a thing counts in its number. */
export const countsWords = (of: Of, thing: ThingCounted): string => (!thing.counted ? `not counted: ${thing.why ?? "left out"}` : HITS[of][thing.hit ? 0 : 1]);

/** The list counted: the same figures as the number it explains. */
export function behindSentence({ of }: Pick<NumberAsked, "of">, { things, n, x }: Behind, locale?: string): string {
  const some = (one: string, many: string, amount = n) => count(amount, one, many, locale), hits = number(x, 0, locale);
  const said: Readonly<Record<Of, string>> = {
    inspections: `${hits} failed of ${some("inspected", "inspected")}.`,
    comebacks: `Of ${some("failure put right, ", "failures put right, ")}${hits} came back.`,
    parts: `${some("part", "parts")} followed, ${hits} of them failed.`,
    pieces: `${some("piece", "pieces")}, ${hits} of them wanted when there were none.`,
    jobs: `${some("job", "jobs")} with minutes, ${hits} of them paid and charged.`,
    reels: `${some("reel", "reels")}, ${hits} of them finished.`,
  };
  const out = things.filter(({ counted }) => !counted).length;
  return `${said[of]}${out === 0 ? "" : ` ${number(out, 0, locale)} more in the list ${out === 1 ? "is" : "are"} not counted; the reason stands beside.`}`;
}

/** Files and lines of a thing: `tickets.csv 4; findings.csv 12, 13`. */
export const sourcesWords = (sources: readonly Source[]): string =>
  [...grouped(sources, ({ source_file }) => source_file)].map(([file, rows]) => `${file} ${rows.map(({ source_line }) => source_line).join(", ")}`).join("; ");

const importsWords = (sources: readonly Source[]): string => [...new Set(sources.map(({ import_no }) => import_no))].sort((a, b) => a - b).join(", ");
const amount = (key: "low" | "high", label: string, unit?: string): Column<ThingCounted> =>
  ({ key, label, ...(unit && { unit }), align: "right", value: (row) => row[key], text: (row) => (row[key] === null ? DASH : number(row[key], Number.isInteger(row[key]) ? 0 : 1)) });

const JOB: Column<ThingCounted> = { key: "job", label: "Job", value: ({ job }) => job };
const SAID: Column<ThingCounted> = { key: "said", label: "Written down", wide: true, value: ({ said }) => said, text: ({ said }) => said ?? "nothing written" };

/** What sets the things of each number apart. */
const MIDDLE = (of: Of, { clock, currency }: { clock: NumberAsked["clock"]; currency: string }): readonly Column<ThingCounted>[] => ({
  inspections: [JOB, SAID],
  comebacks: [amount("high", "Came back after", "days"), SAID],
  parts: [amount("low", "Good at", CLOCK_WORDS[clock]), amount("high", "Failed by", CLOCK_WORDS[clock]), SAID],
  pieces: [
    { key: "position", label: "Part", value: (row: ThingCounted) => placeName(row.position) }, { key: "part_no", label: "Its number", value: (row: ThingCounted) => row.part_no },
    amount("high", "Pieces"),
  ],
  jobs: [JOB, amount("high", "Minutes"), { key: "low", label: "Labour charged", align: "right" as const, value: (row: ThingCounted) => row.low, text: (row: ThingCounted) => money(row.low, currency) }],
  reels: [JOB],
})[of];

/** Columns of the list behind a number. */
export function behindColumns(of: Of, shown: { readonly clock: NumberAsked["clock"]; readonly currency: string }): readonly Column<ThingCounted>[] {
  return [
    { key: "ticket", label: "Ticket", value: ({ ticket_no }) => ticket_no },
    { key: "received_on", label: "Came in", value: ({ received_on }) => received_on, text: ({ received_on }) => date(received_on) },
    { key: "reel", label: "Reel", value: (row) => named(row) },
    ...MIDDLE(of, shown),
    { key: "counts", label: "Counts as", wide: true, value: (row) => countsWords(of, row) },
    { key: "sources", label: "File and lines", wide: true, value: ({ sources }) => sourcesWords(sources) },
    { key: "imports", label: "Import", align: "right", value: ({ sources }) => importsWords(sources) },
  ];
}

interface Line { readonly nth: number; readonly thing: ThingCounted; readonly source: Source }

/** The list as a file for a spreadsheet: one line for each row of a file; lines with the same `number` are counted once. */
export function behindFile(of: Of, { things }: Behind): string {
  const lines = things.flatMap((thing, at): Line[] => thing.sources.map((source) => ({ nth: at + 1, thing, source })));
  const of_thing = (key: keyof ThingCounted & string): Column<Line> => ({ key, label: "", value: ({ thing }) => thing[key] as string | number | null });
  const of_row = (key: keyof Source): Column<Line> => ({ key, label: "", value: ({ source }) => source[key] });
  return csv<Line>([
    { key: "number", label: "", value: ({ nth }) => nth }, of_thing("ticket_no"), of_thing("received_on"), of_thing("maker"), of_thing("model"), of_thing("reel_kind"), of_thing("job"),
    ...(of === "reels" || of === "jobs" ? [] : [of_thing("position")]), ...(of === "pieces" ? [of_thing("part_no")] : []),
    ...FILE_AMOUNTS[of].map(([key, name]): Column<Line> => ({ ...of_thing(key), key: name })),
    { key: "counts_as", label: "", value: ({ thing }) => countsWords(of, thing) }, of_thing("said"), of_row("source_file"), of_row("source_line"), of_row("import_no"),
  ], lines);
}

/** What the two amounts of a thing are called in the file. */
const FILE_AMOUNTS: Readonly<Record<Of, readonly (readonly ["low" | "high", string])[]>> = {
  inspections: [], comebacks: [["high", "days_until_back"]], parts: [["low", "good_at"], ["high", "failed_by"]], pieces: [["high", "pieces"]],
  jobs: [["high", "labour_min"], ["low", "labour_charge"]], reels: [],
};
