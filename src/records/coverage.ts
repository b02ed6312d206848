import { coverageExceptions, groupCoverage, jobs, positions } from "./vocabulary-tables.ts";
import type { CoverageException, CoverageLevel, Job, Position, ReelKind } from "./vocabulary-tables.ts";

/** What a job opens on a reel of this kind. */
export interface CoverageRow {
  reel_kind: ReelKind;
  job: Job;
  position: string;
  /** `inspected` counts in the denominator with nothing written; `seen` counts only when something is written. */
  level: "inspected" | "seen";
  /** the tier of reel for which the row does not hold, null when it holds for all */
  tier_not: string | null;
  /** a reel of this kind may lack the position */
  optional: boolean;
}

const TIER_CONDITION = /^tier is not (\S+)$/;

/** The rows of one position at one job: where an exception holds only for some tiers, the others keep the group's level. */
function rows(position: Position, reel_kind: ReelKind, job: Job, base: CoverageLevel, exception: CoverageException | undefined): CoverageRow[] {
  const level = exception?.level ?? base;
  if (level === "not seen") return [];
  const tier = exception?.condition ? TIER_CONDITION.exec(exception.condition)?.[1] : undefined;
  if (exception?.condition && !tier) throw new RangeError(`coverage: cannot read the condition ${exception.condition}`);
  return [{ reel_kind, job, position: position.position, level, tier_not: tier ?? null, optional: position.qty_min === 0 }];
}

/**
 * Every job × reel kind × position that is opened (`inspected`) or looked at from outside (`seen`).
 *
 * Built from the group matrix and its exceptions (common practice, no source); what is not seen has no row.
 */
export const coverage: readonly CoverageRow[] = positions.flatMap((position) =>
  position.reel_kinds.flatMap((reel_kind) => jobs.flatMap(({ job }) => {
    const base = groupCoverage.find((row) => row.group === position.group && row.job === job)?.level;
    if (base === undefined) throw new RangeError(`coverage: group ${position.group} has no level for the job ${job}`);
    const exception = coverageExceptions.find((row) => row.position === position.position && row.job === job);
    return rows(position, reel_kind, job, base, exception);
  })));
