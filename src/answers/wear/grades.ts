import { gradeShares, proportionalOdds } from "../../stats/proportional-odds.ts";
import { number } from "../wording.ts";
import type { GradeRow } from "./wear-records.ts";
import type { GradePicture } from "./wear.ts";

const GRADES = 5, BANDS = 6, POINTS = 30;
/** Fewest inspections for a picture. */
const FEWEST_SIGHTS = 20;

const sum = (rows: readonly GradeRow[]) => rows.reduce((total, { sights }) => total + sights, 0);

/** Bands of exposure with about as many inspections in each. */
function bandsOf(rows: readonly GradeRow[]): GradePicture["bands"] {
  const ordered = [...rows].sort((a, b) => a.exposure - b.exposure), each = sum(rows) / BANDS, bands: { from: number; to: number; counts: number[] }[] = [];
  let from = 0, counts = Array.from({ length: GRADES }, () => 0), inside = 0;
  for (const [i, { exposure, grade, sights }] of ordered.entries()) {
    counts[grade] = (counts[grade] ?? 0) + sights;
    inside += sights;
    const next = ordered[i + 1];
    if (next && (next.exposure === exposure || inside < each)) continue;
    bands.push({ from, to: exposure, counts });
    [from, counts, inside] = [exposure, counts.map(() => 0), 0];
  }
  return bands;
}

/** Share of every grade by exposure; inspections with nothing written count as grade 0, and how many those are is told. */
export function gradePicture(rows: readonly GradeRow[]): GradePicture {
  const bands = bandsOf(rows), unwritten = sum(rows.filter(({ written }) => !written)), none = { points: [], bands, unwritten };
  const seen = [...new Set(rows.map(({ grade }) => grade))].sort((a, b) => a - b);
  if (sum(rows) < FEWEST_SIGHTS || seen.length < 2) return { ...none, status: "too few", note: "Too few graded inspections for a picture." };
  const fit = proportionalOdds(rows.map(({ exposure, grade, sights }) => ({ grade: seen.indexOf(grade), x: [Math.log(exposure)], count: sights })));
  if (fit.status !== "ok") return { ...none, status: "did not converge", note: "No picture fits these grades." };
  const longest = Math.max(...rows.map(({ exposure }) => exposure));
  const points = Array.from({ length: POINTS }, (_, i) => {
    const exposure = (longest * (i + 1)) / POINTS, of_seen = gradeShares(fit, [Math.log(exposure)]);
    return { exposure, shares: Array.from({ length: GRADES }, (__, grade) => of_seen[seen.indexOf(grade)] ?? 0) };
  });
  return { ...none, status: "ok", points, note: unwritten > 0 ? `${number(unwritten)} of ${number(sum(rows))} inspections have no grade written and are taken as new.` : "" };
}
