import type { NoteCell } from "../notes/note-finding.ts";
import { actionNamed, jobNamed } from "../vocabulary.ts";
import type { ReelKind } from "../vocabulary.ts";
import { reelCount, reelsIn } from "./cells/reel-name.ts";
import type { ReelName, ReelNames } from "./cells/reel-name.ts";
import type { MadeNumbers } from "./cells/ticket-number.ts";
import type { ReadJob } from "./job-rows.ts";
import { withRoutine } from "./routine.ts";
import type { RowFindings, RowText } from "./row-findings.ts";
import type { FixCounts, MadeRecord, RowOutcome } from "./row-outcome.ts";
import { batchIn, shares, ticketNumbers } from "./several-reels.ts";

export interface JobText extends RowText {
  readonly means: string;
  readonly cell: NoteCell;
}

export interface JobTools {
  readonly names: ReelNames;
  readonly numbers: MadeNumbers;
  readonly findings: RowFindings;
  readonly fixes: FixCounts;
  /** Places whose seals are changed as routine at services. */
  readonly routine: ReadonlySet<string>;
  readonly reel_heading: string | null;
  readonly day_heading: string | null;
}

/** A reel that took more than this is a year typed wrong (common practice, no source). */
const LONGEST_DAYS = 1000, DAY_MS = 86_400_000;

interface Reel { readonly name: ReelName; readonly nth: number; readonly of: number; readonly listed: boolean }

/** The reels of a row; a fault when it does not say which. */
function reels(job: ReadJob, { names, fixes, reel_heading }: JobTools): Reel[] | string {
  const text = job.cells.get("reel");
  if (text === undefined) {
    const model = job.cells.get("model");
    if (model === undefined) return `${reel_heading ?? "the reel"} is empty`;
    return [{ name: { maker: job.cells.get("maker") ?? null, model, rest: "", kind: null }, nth: 0, of: 1, listed: false }];
  }
  const listed = reelsIn(text), found = listed.map((one) => names.nameOf(one));
  if (found.some((name) => name === null)) return `“${text.slice(0, 60)}” does not say which reel it is; write its model`;
  const counting = job.texts.find(({ text: said, means }) => reelCount(said) > 1 && !job.ditto.has(means));
  const count = listed.length > 1 ? 1 : counting ? reelCount(counting.text) : 1;
  if (listed.length > 1) fixes.add("several reels in one cell made a ticket each", text, listed.join(" | "));
  if (counting) fixes.add("“x reels” made a ticket for each", counting.text.slice(-30), `${count} tickets`);
  const all = listed.length > 1 ? found : Array.from({ length: count }, () => found[0]);
  return all.flatMap((name, nth) => (name ? [{ name, nth, of: all.length, listed: listed.length > 1 }] : []));
}

/** What a text says of one of several reels: its own piece, all of it where all reels are alike, nothing where that cannot be told. */
function own(text: string, { nth, of, listed }: Reel): string | null {
  if (of === 1 || !listed) return text;
  return shares(text, of)?.[nth] ?? null;
}

function minutes({ time }: ReadJob, { nth, of }: Reel): string {
  if (!time || time.minutes.length === 0) return "";
  const all = time.minutes.reduce((sum, one) => sum + one, 0);
  if (of > 1 && time.minutes.length === of) return String(time.minutes[nth]);
  return String(of === 1 || time.each ? all : Math.round((all / of) * 10) / 10);
}

const shared = (text: string | undefined, of: number) => (text === undefined || of === 1 ? text ?? "" : String(Math.round((Number(text) / of) * 100) / 100));

/** The job a text of work done begins with (`F/S. brg x2`); null when it names none. */
function jobIn(texts: readonly JobText[], whole: boolean): string | null {
  for (const { text, means } of texts) {
    if (means !== "work_text" && means !== "complaint_work_text") continue;
    const first = text.split(/[.;,\n]/)[0] ?? "", job = jobNamed(first) ?? (actionNamed(first)?.code === "OVERHAUL" ? "full service" : null);
    if (job !== null) return job;
  }
  return whole ? "full service" : null;
}

/** @param rest what stands behind the reel's name, which depends on the names that are known */
function note(job: ReadJob, rest: string): string {
  const texts = job.texts.map(({ text, heading, means }) => (means === "work_text" ? text : `${heading}: ${text}`));
  const slots = [...job.slots.values()].map(({ fault, action }) => [fault, action].filter((one) => one !== "").join(" "));
  return [job.cells.get("note"), ...texts, ...slots, rest, ...job.left_over].filter((one) => one !== undefined && one !== "").join(" | ");
}

/** Slots (`FIND1`, `ACT1`) are read as one sentence each. */
function slotTexts({ slots }: ReadJob): RowText[] {
  return [...slots.values()].filter(({ fault }) => fault !== "").map(({ fault, action, heading }) => ({ heading, text: `${fault} ${action}`.trim(), cell: "note" as const }));
}

function partRecords(ticket_no: string, { parts }: ReadJob): MadeRecord[] {
  return parts.filter(({ qty }) => Number(qty) > 0).map(({ position, qty, heading }) =>
    ({ table: "findings", cells: { ticket_no, position, action: "replaced", qty, read_from: heading, rule: "a column of its own", confidence: "1" }, words: `${heading}:${qty}` }));
}

function ticketNumber(job: ReadJob, reel: Reel, numbers: readonly string[], made: string): string {
  if (numbers.length === reel.of && reel.of > 1) return numbers[reel.nth] ?? made;
  const base = job.cells.get("ticket_no") ?? made;
  return reel.of === 1 ? base : `${base}/${reel.nth + 1}`;
}

function tooLong({ cells }: ReadJob): string | null {
  const from = cells.get("received_on") ?? "", to = cells.get("finished_on");
  if (to === undefined) return null;
  const took = (Date.parse(to) - Date.parse(from)) / DAY_MS;
  return took > LONGEST_DAYS ? `the job would have taken ${Math.round(took / 365)} years; is a year wrong?` : null;
}

/** Which reel and which kind of job it is are worked out with more than the row; what is written stays the same. */
function asWritten(job: ReadJob): Readonly<Record<string, string | null>> {
  const said = (name: string) => job.cells.get(name)?.replace(/\s+/g, " ") ?? null, reel = said("reel"), own = note(job, "").replace(/\s+/g, " ");
  const written = { job: said("job"), note: own === "" ? null : own };
  return reel === null ? written : { ...written, maker: said("maker"), model: reel, reel_kind: said("reel_kind") };
}

function oneReel(job: ReadJob, reel: Reel, base: string, numbers: readonly string[], tools: JobTools): readonly MadeRecord[] {
  const ticket_no = ticketNumber(job, reel, numbers, base), day = job.cells.get("received_on") ?? "", kind = (job.cells.get("reel_kind") ?? reel.name.kind) as ReelKind | null;
  const said = own(job.cells.get("complaint") ?? "", reel) ?? job.cells.get("complaint") ?? "";
  const texts = [...job.texts, ...slotTexts(job).map((one) => ({ ...one, means: "slot" }))].flatMap((one) => {
    const text = own(one.text, reel) ?? (one.means === "checked_text" ? one.text : null);
    return text === null ? [] : [{ ...one, text }];
  });
  const whole = texts.some((one) => one.means === "work_text" && tools.findings.reading(one, kind, said).whole_job);
  const batch = job.cells.get("batch") ?? job.customer.map((text) => batchIn(text, day)).find((one) => one !== null) ?? (reel.of > 1 ? `together ${base}` : "");
  const { maker, model } = reel.name, cells: Record<string, string> = {
    ...Object.fromEntries(job.cells), ticket_no, maker: maker ?? job.cells.get("maker") ?? "", model, complaint: said, batch, labour_min: minutes(job, reel),
    reel_kind: kind ?? "", labour_charge: shared(job.cells.get("labour_charge"), reel.of), parts_charge: shared(job.cells.get("parts_charge"), reel.of),
    job: job.cells.get("job") ?? jobIn(job.texts, whole) ?? "", note: note(job, reel.name.rest),
  };
  delete cells["reel"];
  const records: MadeRecord[] = [{ table: "tickets", cells, written: asWritten(job) }, ...tools.findings.records(ticket_no, texts, kind, said), ...partRecords(ticket_no, job)];
  return withRoutine(records, tools.routine, tools.fixes);
}

/** The tickets and findings of one row. */
export function jobRecords(job: ReadJob, tools: JobTools): RowOutcome {
  const found = reels(job, tools), heading = tools.reel_heading ?? "model";
  if (typeof found === "string") return { end: "to fix", faults: [{ column: heading, value: job.cells.get("reel") ?? "", reason: found }] };
  const long = tooLong(job);
  if (long !== null) return { end: "to fix", faults: [{ column: tools.day_heading ?? "received_on", value: job.cells.get("received_on") ?? "", reason: long }] };
  const written = job.cells.get("ticket_no"), numbers = written === undefined ? [] : ticketNumbers(written);
  const base = written ?? tools.numbers.numberFor(job.cells.get("received_on") ?? "", job.content);
  if (written === undefined) tools.fixes.add("the job has no number; one was made of its day and content", `line ${job.line}`, base);
  if (found.length > 1 && found.some(({ listed }) => listed) && job.texts.some(({ text, means }) => means !== "checked_text" && shares(text, found.length) === null)) {
    tools.fixes.add("a text about several reels could not be shared out; it was kept in the notes and no finding was read from it", job.texts[0]?.text ?? "", "note");
  }
  return { end: "in", records: found.flatMap((reel) => oneReel(job, reel, base, numbers, tools)) };
}
