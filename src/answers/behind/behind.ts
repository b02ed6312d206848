import type { Engine, Row } from "../../db/engine.ts";
import { COMEBACK_DAYS } from "../failures/failure-values.ts";
import { filterValues } from "../filter.ts";
import type { Denominator, Opening, RecordsFilter } from "../filter.ts";
import { jobName } from "../labour/job-name.ts";
import { withSlips } from "../labour/slips.ts";
import { followParts } from "../wear/follow-parts.ts";
import placeOfSql from "../wear/place-of.sql?raw";
import type { Clock, FirstSights } from "../wear/wear.ts";
import comebacksSql from "./comebacks.sql?raw";
import finishedJobsSql from "./finished-jobs.sql?raw";
import followedPartsSql from "./followed-parts.sql?raw";
import inspectionsSql from "./inspections.sql?raw";
import piecesSql from "./pieces.sql?raw";
import reelsSql from "./reels.sql?raw";
import { thingsOf, type SourceRow, type ThingCounted } from "./things.ts";

/**
 * What a number counts: looks at a part and those that had failed; failures put right and those that came back; parts followed and
 * those that failed; pieces of a part and those wanted; jobs with believable minutes and those paid; reels that came in and those finished.
 */
export const COUNTED = ["inspections", "comebacks", "parts", "pieces", "jobs", "reels"] as const;

/** A number on a screen: what it counts, under which filter. */
export interface NumberAsked extends RecordsFilter {
  readonly of: (typeof COUNTED)[number];
  /** Of inspections, comebacks and parts. */
  readonly position: string | null;
  /** Of pieces: the name of those parts that are the same thing. */
  readonly part: string | null;
  /** Of jobs, as `jobName` says it; null for all. */
  readonly job: string | null;
  readonly opening: Opening;
  readonly denominator: Denominator;
  readonly clock: Clock;
  readonly first_sights: FirstSights;
}

/** What a number was counted from: `n` of it count, `x` of those are hits (failed, came back, wanted, paid, finished). */
export interface Behind {
  readonly things: readonly ThingCounted[];
  readonly n: number;
  readonly x: number;
}

const ask = async (engine: Engine, sql: string, values: Row, signal?: AbortSignal) => thingsOf(await engine.rows<SourceRow>(sql, values, signal));

/** Finished jobs; what looks like a typing slip is set aside as in `labour`. */
async function jobs(engine: Engine, { job, ...filter }: NumberAsked, signal?: AbortSignal): Promise<ThingCounted[]> {
  const all = await ask(engine, finishedJobsSql, filterValues(filter), signal);
  const sorted = withSlips(all.map((thing) => ({ ...thing, labour_min: thing.high })));
  return sorted.filter(({ row }) => job === null || jobName(row) === job)
    .map(({ row: { labour_min: _, ...thing }, slip }) => (slip === null ? { ...thing, hit: thing.counted && thing.hit } : { ...thing, counted: false, hit: false, why: slip }));
}

async function parts(engine: Engine, { position, clock, first_sights, ...filter }: NumberAsked, signal?: AbortSignal): Promise<ThingCounted[]> {
  await followParts(engine, signal ? { signal } : {});
  const [numbered] = await engine.rows<{ place: number }>(placeOfSql, { position }, signal);
  return ask(engine, followedPartsSql, { ...filterValues(filter), clock, first_sights, place: numbered?.place ?? null }, signal);
}

const WAYS: Readonly<Record<NumberAsked["of"], (engine: Engine, asked: NumberAsked, signal?: AbortSignal) => Promise<ThingCounted[]>>> = {
  inspections: (engine, { opening, denominator, position, ...filter }, signal) => ask(engine, inspectionsSql, { ...filterValues(filter), opening, denominator, position }, signal),
  comebacks: (engine, { position, ...filter }, signal) => ask(engine, comebacksSql, { ...filterValues(filter), position, within_days: COMEBACK_DAYS }, signal),
  pieces: (engine, { part, ...filter }, signal) => ask(engine, piecesSql, { ...filterValues(filter), part }, signal),
  reels: (engine, filter, signal) => ask(engine, reelsSql, filterValues(filter), signal),
  jobs, parts,
};

/**
 * What made a number, thing by thing, each with every row of every file behind it, the newest ticket first. Under the filter of the number
 * `n` and `x` are the number's own; what was looked at and left out stands in the list with the reason.
 */
export async function behind(engine: Engine, asked: NumberAsked, signal?: AbortSignal): Promise<Behind> {
  const things = await WAYS[asked.of](engine, asked, signal), worth = (thing: ThingCounted) => (asked.of === "pieces" ? thing.high ?? 0 : 1);
  const sum = (some: readonly ThingCounted[]) => some.reduce((total, thing) => total + worth(thing), 0);
  return { things, n: sum(things.filter(({ counted }) => counted)), x: sum(things.filter(({ hit }) => hit)) };
}
