import { number, pieces } from "../wording.ts";
import type { LotMonths, LotRow, LotShare } from "./lot.ts";

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
const shareOf = ({ fitted, failed_early }: LotShare): string => `${number(failed_early)} of ${number(fitted)}`;
const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];
const month = (day: string): string => `${MONTHS[Number(day.slice(5, 7)) - 1] ?? ""} ${day.slice(0, 4)}`;

function endsOf({ began, ended }: Pick<LotRow, "began" | "ended">): string {
  if (began === null || ended === null) return "";
  const between = ({ earliest, latest }: LotMonths) => (earliest === latest ? `in ${month(earliest)}` : `between ${month(earliest)} and ${month(latest)}`);
  return `The first of them may have been fitted ${between(began)}, the last ${between(ended)}.`;
}

/** Models of the window with so many fittings can say whether they were hit. */
const FEWEST_OF_ONE = 3;

function hitAlike(shares: readonly LotShare[], what: string): string {
  const told = shares.filter(({ fitted }) => fitted >= FEWEST_OF_ONE);
  const worse = told.filter(({ fitted, failed_early, others_fitted, others_failed_early }) =>
    others_fitted > 0 && failed_early / fitted > others_failed_early / others_fitted);
  if (told.length < 2) return "";
  const list = told.slice(0, 5).map((one) => `${one.name} ${shareOf(one)}`).join(", ");
  return worse.length === told.length ? `Every ${what} is hit alike (${list}), so it is the parts and not one ${what}.`
    : `${number(worse.length)} of ${pieces(told.length, what)} did worse than outside the window (${list}).`;
}

/**
 * Why a lot's verdict says what it says, the most important sentence first.
 *
 * @param hands who fitted them: technicians of one shop, or several shops
 * @param reels that still carry one
 */
export function lotReasons(row: Omit<LotRow, "reasons" | "carriers" | "technicians">, hands: readonly [shares: readonly LotShare[], what: string], reels: number): string[] {
  const { fitted, failed_early, expected_share, p_value, verdict, lots_written } = row;
  if (verdict === "too few") return [`Only ${pieces(fitted, "fitting")} were looked at again: too few to look for a bad batch.`];
  const others = row.models.reduce((sum, { others_fitted }) => sum + others_fitted, 0);
  const usual = expected_share === null ? "" : `; of ${pieces(others, "piece")} fitted to the same models outside those months ${percent(expected_share)} had, each model counted as here`;
  const seen = `Of ${pieces(fitted, "piece")} fitted ${month(row.from)} to ${month(row.to)} and looked at again within 14 months`;
  const counts = `${seen}, ${number(failed_early)} had failed (${percent(failed_early / fitted)})${usual}.`;
  if (verdict === "no different") return [`The worst months are no worse than chance makes some months. ${counts}`];
  const tries = p_value === null ? "" : p_value <= 0.001 ? `fewer than 1 of ${number(1000)}` : `about ${number(Math.max(1, 1000 * p_value))} of ${number(1000)}`;
  const chance = tries === "" ? "" : `Shuffling the fittings within each model and part gives months as bad in ${tries} tries.`;
  const written = lots_written.length === 0 ? "No lot number was written beside them." : `Lots written beside them: ${lots_written.join(", ")}.`;
  const carried = reels === 0 ? "" : `${pieces(reels, "reel")} may still carry one.`;
  return [counts, endsOf(row), chance, hitAlike(row.models, "model"), hitAlike(...hands), written, carried].filter((sentence) => sentence !== "");
}
