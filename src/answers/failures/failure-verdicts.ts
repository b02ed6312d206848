import type { Engine } from "../../db/engine.ts";
import type { Denominator, Opening } from "../filter.ts";
import { OPENINGS } from "../filter.ts";
import { grouped } from "../grouped.ts";
import { modelName } from "../model-name.ts";
import { takingTurns } from "../worker-work.ts";
import type { PlainWork, WorkMeans } from "../worker-work.ts";
import { conditionRows } from "./condition-rows.ts";
import { besideRows, costOf, leadingFault, seasonSides, seasonTally } from "./besides.ts";
import { drawnIn, judgedSides, outstanding, widening } from "./judged-sides.ts";
import type { Breath, LeftOut, Place } from "./judged-sides.ts";
import { TOO_FEW, wordOf } from "./judged.ts";
import type { Unjudged } from "./judged.ts";
import { fieldOf } from "./peers.ts";
import type { Field, Peer } from "./peers.ts";
import placesSql from "./places.sql?raw";
import { reasonsOf } from "./reasons.ts";
import { verdictRecords } from "./verdict-records.ts";
import type { CountedRecords, VerdictFilter, VerdictRecords } from "./verdict-records.ts";
import { VERDICT_WORDS } from "./verdict.ts";
import type { Figure, LeadingFault, Verdict } from "./verdict.ts";

export const ALL_VERDICTS: VerdictFilter = { reel_kind: null, water: null, from: null, to: null, denominator: "coverage", group: null, position: null };

/** What a position is called; one row of `places.sql`. */
export type PlaceName = {
  readonly position: string; readonly name: string; readonly group_code: string | null; readonly group_name: string | null; readonly family: string | null;
};
export interface VerdictMeans extends WorkMeans {
  readonly names: readonly PlaceName[];
  readonly denominator: Denominator;
  /** Drawing shares in is the slow part: only planned openings need it for the words, tables may want it for all. */
  readonly drawn?: "planned" | "all" | undefined;
}

/** A fault this unlike the others' is evidence of its own. */
const FAULT_TELLS = { failed: 5, p: 0.01 } as const;
/** Seasons share their owners and waters, so their agreement counts only where, all seasons together and beside its own other parts, it fails this often too. */
const FAIRLY = 1.5;

/** Counts steps for the progress bar and gives the screen its turns. */
function breathing(total: number, means: WorkMeans): Breath {
  const turn = takingTurns(means);
  let done = 0;
  return () => turn("Comparing models", done += 1, total);
}

type Sides = ReadonlyMap<Opening, ReadonlyMap<Peer, Unjudged>>;

/** All sides of all places, first beside all others, then without the models that stand out themselves. */
async function allSides(
  places: readonly Place[], fields: readonly Field[], records: VerdictRecords, breath: Breath, { drawn }: VerdictMeans,
): Promise<{ sides: Sides; left_out: LeftOut }> {
  const widen = widening(fields, records.mates), sides = new Map<Opening, ReadonlyMap<Peer, Unjudged>>();
  const planned = await drawnIn(fields, "planned", breath);
  const first = await judgedSides({ places, opening: "planned", pooled: planned, left_out: new Map(), widen, breath }), left_out = outstanding(places, first);
  for (const opening of OPENINGS) {
    const pooled = opening === "planned" ? planned : drawn === "all" ? await drawnIn(fields, opening, breath) : new Map<Peer, Figure>();
    sides.set(opening, await judgedSides({ places, opening, pooled, left_out, widen, breath }));
  }
  return { sides, left_out };
}

/** Evidence beside the ratio: every season that can tell agrees, or one fault is far commoner than on the others. */
function moreEvidence({ adjusted, beyond_own }: Unjudged, told: number, agree: number, fault: LeadingFault | null): boolean {
  const fairly = adjusted.value !== null && adjusted.value >= FAIRLY && beyond_own.value !== null && beyond_own.value >= FAIRLY;
  const seasons = fairly && told >= 2 && agree === told;
  const commoner = fault !== null && fault.failed >= FAULT_TELLS.failed && fault.p_value !== null && fault.p_value < FAULT_TELLS.p
    && fault.failed * fault.others_of > fault.others_failed * fault.of;
  return seasons || commoner;
}

function verdict(place: Place, sides: Sides, left_out: LeftOut, rows: ReturnType<typeof besideRows>, means: VerdictMeans): Verdict {
  const { field, peer } = place, { position } = field, of = (opening: Opening) => sides.get(opening)?.get(peer) as Unjudged;
  const all = of("*"), decided_on = of("planned").inspected >= TOO_FEW.inspected ? "planned" : "*", side = of(decided_on);
  const without = left_out.get(position) ?? new Set<string>();
  const seasons = seasonSides(field, peer, without, of("planned").widened), tally = seasonTally(seasons);
  const fault = leadingFault(field, peer, without, rows.faults(position), side), more = moreEvidence(side, tally.seasons_told, tally.seasons_agree, fault);
  const judged = OPENINGS.map((opening) => ({ ...of(opening), word: wordOf(of(opening), all, opening !== "complaint" && more, opening === "planned") }));
  const word = judged.find(({ opening }) => opening === decided_on)?.word ?? "too few";
  const names = field.models.filter(({ key }) => without.has(key) && !peer.members.includes(key)).map(modelName);
  const { widened } = side, name = means.names.find((one) => one.position === position);
  return {
    position, position_name: name?.name ?? position, group_code: name?.group_code ?? null, group_name: name?.group_name ?? null, family: name?.family ?? null,
    maker: peer.maker, model: peer.model, reel_kind: peer.reel_kind, series: peer.series, models: peer.names, denominator: means.denominator,
    word, decided_on, sides: judged, left_out: names, widened, seasons, ...tally, fault, cost: costOf(peer, rows.costs(position)),
    reasons: reasonsOf({ word, side, all, left_out: names, widened, seasons, ...tally, fault, series: peer.series, names: peer.names }),
  };
}

/** Worst word first, then what costs most. */
function inOrder(a: Verdict, b: Verdict): number {
  return VERDICT_WORDS.indexOf(a.word) - VERDICT_WORDS.indexOf(b.word) || b.cost.money - a.cost.money || (a.position < b.position ? -1 : a.position > b.position ? 1 : 0);
}

/**
 * Failures told apart from chance and from how the reels come in, from records already counted. Plain arrays in and out, so
 * it may run in a worker.
 *
 * @returns every part on every model and series, worst word first, then by what it costs
 * @throws the signal's reason when called off
 */
export async function verdictsOf(records: VerdictRecords, means: VerdictMeans): Promise<readonly Verdict[]> {
  const families = new Map(means.names.map(({ position, family }) => [position, family]));
  const fields = [...grouped(records.conditions, ({ position }) => position)].map(([position, rows]) => fieldOf(position, rows));
  const places = fields.flatMap((field) => [...field.models, ...field.series].map((peer): Place => ({ field, peer, family: families.get(field.position) ?? field.position })));
  const breath = breathing(3 * fields.length + 4 * places.length, means);
  const { sides, left_out } = await allSides(places, fields, records, breath, means), rows = besideRows(records);
  return places.map((place) => verdict(place, sides, left_out, rows, means)).sort(inOrder);
}

/** What was counted, and how it is to be judged. */
export type JudgeAsk = Pick<VerdictMeans, "names" | "denominator" | "drawn"> & { readonly records: CountedRecords };
export type JudgeWork = PlainWork<JudgeAsk, readonly Verdict[]>;

/** The judging on this thread: in Node, in tests, and in the worker itself. */
export const judge: JudgeWork = ({ records: { cells, ...records }, ...asked }, means) => verdictsOf({ ...records, conditions: conditionRows(cells) }, { ...asked, ...means });

/**
 * The same from the engine.
 *
 * @param means `work`: where the judging is done, `judgeInWorker` in the browser; here by default
 */
export async function failureVerdicts(
  engine: Engine, filter: VerdictFilter, signal?: AbortSignal, { work = judge, drawn, report }: Pick<VerdictMeans, "drawn" | "report"> & { readonly work?: JudgeWork } = {},
): Promise<readonly Verdict[]> {
  const names = await engine.rows<PlaceName>(placesSql, {}, signal), records = await verdictRecords(engine, filter, { signal, report });
  return work({ records, names, denominator: filter.denominator, drawn }, { signal, report });
}
