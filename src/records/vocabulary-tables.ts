import Papa from "papaparse";
import actionsCsv from "../../data/vocabulary/actions.csv?raw";
import ambiguousCsv from "../../data/vocabulary/ambiguous_words.csv?raw";
import bearingsCsv from "../../data/vocabulary/bearings.csv?raw";
import benchNotesCsv from "../../data/vocabulary/bench_notes.csv?raw";
import cautionsCsv from "../../data/vocabulary/cautions.csv?raw";
import complaintSharesCsv from "../../data/vocabulary/complaint_shares.csv?raw";
import complaintsCsv from "../../data/vocabulary/complaints.csv?raw";
import coverageExceptionsCsv from "../../data/vocabulary/coverage_exceptions.csv?raw";
import coverageCsv from "../../data/vocabulary/coverage.csv?raw";
import familiesCsv from "../../data/vocabulary/families.csv?raw";
import gradesCsv from "../../data/vocabulary/grades.csv?raw";
import jobsCsv from "../../data/vocabulary/jobs.csv?raw";
import modeSpellingsCsv from "../../data/vocabulary/mode_spellings.csv?raw";
import modesCsv from "../../data/vocabulary/modes.csv?raw";
import oringsMetricCsv from "../../data/vocabulary/orings_metric.csv?raw";
import oringsCsv from "../../data/vocabulary/orings.csv?raw";
import positionSpellingsCsv from "../../data/vocabulary/position_spellings.csv?raw";
import positionsCsv from "../../data/vocabulary/positions.csv?raw";
import reelKindsCsv from "../../data/vocabulary/reel_kinds.csv?raw";

export type ReelKind = "spinning" | "conventional" | "baitcaster" | "fly" | "other";
export type Action = "left" | "cleaned" | "lubricated" | "adjusted" | "replaced" | "wanted";
export type CoverageLevel = "inspected" | "seen" | "not seen";
export type Job =
  | "full service" | "external" | "line roller" | "drag" | "anti-reverse" | "bail" | "gear" | "level wind"
  | "spool and brakes" | "handle" | "reseal" | "immersion" | "diagnosis" | "warranty" | "respool" | "other";

export interface Position {
  position: string; name: string; group: string; group_name: string; family: string; reel_kinds: ReelKind[];
  qty_min: number | null; qty_max: number | null; qty_unit: string;
  seal_flag: string | null; salt_class: number | null; criticality: "A" | "B" | "C"; source: string;
}
export interface JobRow { code: string; job: Job; reel_kinds: ReelKind[]; opens: string; spellings: string[]; source: string }
export interface ReelKindRow { letter: string | null; reel_kind: ReelKind; spellings: string[]; source: string }
export interface Family { code: string; family: string; parts_family: string; covers: string; source: string }
export interface Mode {
  mode: string; code: string; name: string; iso14224: string | null; iso15243_or_oring: string | null;
  families: string[]; look: string | null; source: string;
}
export interface ModeSpelling { spelling: string; mode: string; only_families: string[]; source: string }
export interface ActionRow {
  code: string; name: string; action: Action; routine: boolean; grade_at_least: number | null;
  iso14224: string | null; counts_as: string | null; spellings: string[]; source: string;
}
export interface Grade { family: string; grade: number; word: string; look: string; source: string }
export interface Complaint { code: string; complaint: string; reel_kinds: ReelKind[]; spellings: string[]; source: string }
export interface ComplaintShare { code: string; reel_kind: ReelKind; cause: string; positions: string[]; share: number; source: string }
/** A line for the sheet that lies on the bench; without groups it holds for every job. */
export interface BenchNote {
  kind: "small part" | "thread" | "lock" | "grease" | "check";
  groups: string[]; reel_kinds: ReelKind[]; text: string; source: string;
}
/** Something to mind; it stands on the page of all cautions, and on the sheets it names. No kind of reel: every kind. */
export interface Caution {
  topic: "first" | "bench" | "waste" | "warranty" | "names" | "numbers";
  sheets: ("counter" | "bench" | "card")[]; reel_kinds: ReelKind[]; text: string; source: string;
}
export interface Bearing {
  bore_mm: number; outside_mm: number; width_open_mm: number; width_shielded_mm: number;
  code: string; other_code: string | null; typical_use: string; tables_agreeing: number; source: string;
}
export interface Oring { dash: string; size: string; inside_mm: number; inside_tol_mm: number; section_mm: number; met_at: string | null; source: string }
export interface MetricOring { series: string; size: string; code: string | null; inside_mm: number; section_mm: number; source: string }
/** `ask`: null unless the reel kind settles it; `needs a neighbour`: only beside another reel word; `settled`: one reading. */
export interface AmbiguousWord {
  word: string; treat: "ask" | "settled" | "needs a neighbour" | "not a part"; rule: string; source: string;
  by_kind: Partial<Record<ReelKind, string>>;
}
export interface GroupCoverage { group: string; job: Job; level: CoverageLevel; source: string }
export interface CoverageException { position: string; job: Job; level: CoverageLevel; condition: string | null; source: string }

/** One line of a vocabulary file: a missing column is a fault of the file, not of the reader. */
type Cell = (column: string) => string;

function table<Row>(csv: string, row: (cell: Cell) => Row): readonly Row[] {
  const { data } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });
  return data.map((line) => row((column) => {
    const value = line[column];
    if (value === undefined) throw new RangeError(`vocabulary: a line lacks the column ${column}: ${JSON.stringify(line)}`);
    return value;
  }));
}
const words = (text: string): string[] => (text === "" ? [] : text.split(";"));
const textOrNull = (text: string): string | null => (text === "" ? null : text);
const numberOrNull = (text: string): number | null => (text === "" ? null : Number(text));

/** The 155 roles a part can have in a reel. `salt_class` 0 no effect … 3 first to go; `seal_flag` S is a seal, P sits behind one, X exposed. */
export const positions = table<Position>(positionsCsv, (at) => ({
  position: at("position"), name: at("name"), group: at("group"), group_name: at("group_name"), family: at("family"),
  reel_kinds: words(at("reel_kinds")) as ReelKind[], qty_min: numberOrNull(at("qty_min")), qty_max: numberOrNull(at("qty_max")),
  qty_unit: at("qty_unit"), seal_flag: textOrNull(at("seal_flag")), salt_class: numberOrNull(at("salt_class")),
  criticality: at("criticality") as Position["criticality"], source: at("source"),
}));

export const positionSpellings = table(positionSpellingsCsv, (at) => ({ spelling: at("spelling"), position: at("position"), source: at("source") }));

export const jobs = table<JobRow>(jobsCsv, (at) => ({
  code: at("code"), job: at("job") as Job, reel_kinds: words(at("reel_kinds")) as ReelKind[], opens: at("opens"),
  spellings: words(at("spellings")), source: at("source"),
}));

export const reelKinds = table<ReelKindRow>(reelKindsCsv, (at) => ({
  letter: textOrNull(at("letter")), reel_kind: at("reel_kind") as ReelKind, spellings: words(at("spellings")), source: at("source"),
}));

export const families = table<Family>(familiesCsv, (at) => ({
  code: at("code"), family: at("family"), parts_family: at("parts_family"), covers: at("covers"), source: at("source"),
}));

/** What can be wrong with a part, with the nearest terms of ISO 14224 and ISO 15243. */
export const modes = table<Mode>(modesCsv, (at) => ({
  mode: at("mode"), code: at("code"), name: at("name"), iso14224: textOrNull(at("iso14224")),
  iso15243_or_oring: textOrNull(at("iso15243_or_oring")), families: words(at("families")), look: textOrNull(at("look")), source: at("source"),
}));

export const modeSpellings = table<ModeSpelling>(modeSpellingsCsv, (at) => ({
  spelling: at("spelling"), mode: at("mode"), only_families: words(at("only_families")), source: at("source"),
}));

export const actions = table<ActionRow>(actionsCsv, (at) => ({
  code: at("code"), name: at("name"), action: at("action") as Action, routine: at("routine") === "yes",
  grade_at_least: numberOrNull(at("grade_at_least")), iso14224: textOrNull(at("iso14224")), counts_as: textOrNull(at("counts_as")),
  spellings: words(at("spellings")), source: at("source"),
}));

/** How each grade 0…4 looks, per family of part. */
export const grades = table<Grade>(gradesCsv, (at) => ({
  family: at("family"), grade: Number(at("grade")), word: at("word"), look: at("look"), source: at("source"),
}));

export const complaints = table<Complaint>(complaintsCsv, (at) => ({
  code: at("code"), complaint: at("complaint"), reel_kinds: words(at("reel_kinds")) as ReelKind[],
  spellings: words(at("spellings")), source: at("source"),
}));

/** What a complaint usually turns out to be, in tickets of 100; judgement, to be overwritten by the shop's own counts. */
export const complaintShares = table<ComplaintShare>(complaintSharesCsv, (at) => ({
  code: at("code"), reel_kind: at("reel_kind") as ReelKind, cause: at("cause"), positions: words(at("positions")),
  share: Number(at("share")), source: at("source"),
}));

/** What to watch for at the bench, in the order it is told. */
export const benchNotes = table<BenchNote>(benchNotesCsv, (at) => ({
  kind: at("kind") as BenchNote["kind"], groups: words(at("groups")), reel_kinds: words(at("reel_kinds")) as ReelKind[], text: at("text"), source: at("source"),
}));

/** What to mind, in the order it is told. */
export const cautions = table<Caution>(cautionsCsv, (at) => ({
  topic: at("topic") as Caution["topic"], sheets: words(at("sheets")) as Caution["sheets"], reel_kinds: words(at("reel_kinds")) as ReelKind[], text: at("text"), source: at("source"),
}));

export const bearings = table<Bearing>(bearingsCsv, (at) => ({
  bore_mm: Number(at("bore_mm")), outside_mm: Number(at("outside_mm")), width_open_mm: Number(at("width_open_mm")),
  width_shielded_mm: Number(at("width_shielded_mm")), code: at("code"), other_code: textOrNull(at("other_code")),
  typical_use: at("typical_use"), tables_agreeing: Number(at("tables_agreeing")), source: at("source"),
}));

export const orings = table<Oring>(oringsCsv, (at) => ({
  dash: at("dash"), size: at("size"), inside_mm: Number(at("inside_mm")), inside_tol_mm: Number(at("inside_tol_mm")),
  section_mm: Number(at("section_mm")), met_at: textOrNull(at("met_at")), source: at("source"),
}));

export const oringsMetric = table<MetricOring>(oringsMetricCsv, (at) => ({
  series: at("series"), size: at("size"), code: textOrNull(at("code")), inside_mm: Number(at("inside_mm")),
  section_mm: Number(at("section_mm")), source: at("source"),
}));

export const ambiguousWords = table<AmbiguousWord>(ambiguousCsv, (at) => ({
  word: at("word"), treat: at("treat") as AmbiguousWord["treat"], rule: at("rule"), source: at("source"),
  by_kind: Object.fromEntries((["spinning", "conventional", "baitcaster", "fly"] as const)
    .filter((kind) => at(kind) !== "").map((kind) => [kind, at(kind)])),
}));

export const groupCoverage = table<GroupCoverage>(coverageCsv, (at) => ({
  group: at("group"), job: at("job") as Job, level: at("level") as CoverageLevel, source: at("source"),
}));

export const coverageExceptions = table<CoverageException>(coverageExceptionsCsv, (at) => ({
  position: at("position"), job: at("job") as Job, level: at("level") as CoverageLevel,
  condition: textOrNull(at("condition")), source: at("source"),
}));
