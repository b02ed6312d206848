import { coverage } from "../../records/coverage.ts";
import { positions, type Position } from "../../records/vocabulary-tables.ts";
import { REEL_LAYOUTS } from "../../ui/exploded/reel-layouts.ts";

export interface AskedPosition {
  readonly position: string;
  readonly name: string;
  /** As the grades and faults call it. */
  readonly family: string;
  /** Why it is not asked; null where it is. */
  readonly besides: string | null;
  /** The job would open it, where the reel has it. */
  readonly maybe: boolean;
}

/** Parts that come off together. */
export interface AskedGroup {
  readonly title: string;
  readonly asked: readonly AskedPosition[];
  readonly besides: readonly AskedPosition[];
}

export interface AskedFor {
  readonly reel_kind: string | null;
  readonly job: string | null;
  readonly tier: string | null;
  /** What fits and findings show of this model: true it has the position, false it has not. */
  readonly there: ReadonlyMap<string, boolean>;
}

const SEEN = "seen from outside", CLOSED = "not opened by this job", MAYBE = "not every reel has it", ABSENT = "this model has none";

/** The positions of a kind in the order they come off, group by group; what has no place in the drawing follows by its group. */
function ordered(reel_kind: string | null): readonly (readonly [title: string, all: readonly Position[]])[] {
  const own = positions.filter((one) => reel_kind === null || reel_kind === "other" || (one.reel_kinds as readonly string[]).includes(reel_kind));
  const groups = (REEL_LAYOUTS[reel_kind ?? ""] ?? []).map(({ title, parts }) => [title, parts.flatMap(([code]) => own.find(({ position }) => position === code) ?? [])] as const);
  const placed = new Set(groups.flatMap(([, all]) => all)), left = own.filter((one) => !placed.has(one));
  const titles = [...new Set(left.map(({ group_name }) => group_name))];
  return [...groups, ...titles.map((title) => [title, left.filter(({ group_name }) => group_name === title)] as const)];
}

/** True when the coverage list says what this job opens; other jobs count only what is written. */
export const hasList = (reel_kind: string | null, job: string | null): boolean => coverage.some((row) => row.reel_kind === reel_kind && row.job === job);

function besidesOf({ position, qty_min }: Position, { reel_kind, job, tier, there }: AskedFor, listed: boolean): string | null {
  const row = coverage.find((one) => one.reel_kind === reel_kind && one.job === job && one.position === position && (one.tier_not === null || one.tier_not !== tier));
  if (there.get(position) === false) return ABSENT;
  if (listed && !row) return CLOSED;
  if (row?.level === "seen") return SEEN;
  return qty_min === 0 && there.get(position) !== true ? MAYBE : null;
}

/**
 * What is asked at the bench, group by group in the order things come off: the positions the job opens on this kind of reel
 * (coverage, common practice), all of them for a job without a list. The others stand beside, with the reason.
 */
export function askedGroups(of: AskedFor): readonly AskedGroup[] {
  const listed = hasList(of.reel_kind, of.job);
  return ordered(of.reel_kind).map(([title, all]) => {
    const asked = all.map((one): AskedPosition => {
      const besides = besidesOf(one, of, listed);
      return { position: one.position, name: one.name, family: one.family, besides, maybe: besides === MAYBE };
    });
    return { title, asked: asked.filter(({ besides }) => besides === null), besides: asked.filter(({ besides }) => besides !== null) };
  }).filter(({ asked, besides }) => asked.length + besides.length > 0);
}
