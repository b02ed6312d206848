import { unpackedRows } from "../../db/packed-rows.ts";
import { dayAfter } from "../days.ts";
import { takingTurns } from "../worker-work.ts";
import type { WorkMeans } from "../worker-work.ts";
import { deliveryDays } from "./delivery-days.ts";
import { whatHappened } from "./happened.ts";
import { knownBook } from "./known-book.ts";
import type { PackedReplay, PolicyKind, PolicyScore, Replay, ReplayRecords } from "./replay.ts";
import { replayNotes, verdictOf, WHY_NOT } from "./replay-words.ts";
import { asAdvised, CAUTIONS, minMax, oneWhenOneGoes, usedDaily } from "./rules.ts";
import type { KnownBook } from "./rules.ts";
import { runShop } from "./run-shop.ts";
import { scoreOf } from "./score.ts";
import { worldOf } from "./world-of.ts";
import type { ReplayWorld } from "./world-of.ts";
import type { Outcome, Rule, World } from "./world.ts";

/** Most and fewest draws of how long deliveries take, one run being luck, and how many jobs all of them together should hold: luck evens out over many jobs. */
const MOST_DRAWS = 40, FEWEST_DRAWS = 5, JOBS_IN_ALL = 80_000;
const EPOCH = "1970-01-01", STEP = "Walking through your past, order day by order day";

/** The ways of ordering that are compared; habits know use and delivery times as well as the advice does. */
const rulesOf = (book: KnownBook, world: World): { policy: string; kind: PolicyKind; rule: Rule }[] => [
  ...CAUTIONS.map(({ policy }, caution) => ({ policy, kind: "advice" as const, rule: asAdvised(book, caution) })),
  { policy: "one when one goes", kind: "habit", rule: oneWhenOneGoes(world) },
  { policy: "min-max from last year's mean", kind: "habit", rule: minMax(book) },
];

async function scores(records: ReplayRecords, there: ReplayWorld, draws: number, means: WorkMeans): Promise<PolicyScore[]> {
  const { world, lines } = there, { past, settings } = records, turn = takingTurns(means);
  const book = await knownBook(world, past, settings, (done, all) => turn(STEP, done, all + draws)), rules = rulesOf(book, world), outcomes = rules.map((): Outcome[] => []);
  for (let draw = 0; draw < draws; draw += 1) {
    const delivery = deliveryDays(world, past, lines, draw);
    rules.forEach(({ rule }, i) => outcomes[i]?.push(runShop(world, { rule, use: usedDaily(book) }, delivery)));
    await turn(STEP, book.size + draw + 1, book.size + draws);
  }
  return [...rules.map(({ policy, kind }, i) => scoreOf({ policy, kind }, outcomes[i] ?? [], world)), whatHappened(records, there)];
}

/** The records with all rows unpacked. */
export const unpackedReplay = (packed: PackedReplay): ReplayRecords => ({ ...packed, parts: unpackedRows(packed.parts), waits: unpackedRows(packed.waits) });

/**
 * What the advice would have done over the shop's own past, against two habits and what happened (METHODS.md 9).
 *
 * On every order day each way of ordering knows only what was written by then. All have the same first shelf, jobs, order days,
 * smallest orders and delivery days. Plain rows in and out, so it may run in a worker.
 *
 * @throws the signal's reason when called off
 */
export async function replayOf(packed: PackedReplay, means: WorkMeans = {}): Promise<Replay> {
  const records = unpackedReplay(packed), there = worldOf(records);
  if (typeof there === "string") return { status: there, from: null, to: null, scores: [], draws: 0, groups: 0, verdict: [WHY_NOT[there]], notes: [] };
  const { world } = there, draws = Math.max(FEWEST_DRAWS, Math.min(MOST_DRAWS, Math.floor(JOBS_IN_ALL / world.jobs.length))), all = await scores(records, there, draws, means);
  return {
    status: "ok", from: dayAfter(EPOCH, world.first), to: dayAfter(EPOCH, world.last), scores: all, draws, groups: world.groups.length,
    verdict: verdictOf(all), notes: replayNotes(there, records.lines, draws),
  };
}
