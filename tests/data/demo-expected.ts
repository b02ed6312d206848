/**
 * What the demo shop should show, from eight runs of an independent simulation of the same parameters.
 *
 * Lowest and highest of the eight runs; where only a mean was given, `low` and `high` are our own allowance around it,
 * marked `allowed`. All invented: these are figures of the demo, not of the trade.
 */
export interface Expected { name: string; low: number; high: number; allowed?: true; /** range of one shop, where the test's own is not wide enough */ single?: readonly [number, number] }

const between = (name: string, low: number, high: number): Expected => ({ name, low, high });
/** Only a mean is known: the allowance is a share of it on either side. */
const about = (name: string, mean: number, allowance: number): Expected => ({ name, low: mean * (1 - allowance), high: mean * (1 + allowance), allowed: true });

export const VOLUMES: readonly Expected[] = [
  // The upper end allows for a shop that opens more per job and loses reels whose owners never fetch them.
  between("reels seen", 1835, 1900), between("tickets 2023", 1065, 1160), between("tickets 2024", 1171, 1254), between("tickets 2025", 1223, 1306),
  // Opened rows rise with the wider coverage list.
  between("opened", 40_400, 44_500), between("failures a ticket", 0.89, 1.01),
  between("private %", 75.4, 78.8), between("charter %", 11.7, 15.2), between("club %", 8, 10.7),
  between("fresh %", 29.6, 32.4), between("brackish %", 16.7, 19.9), between("salt %", 49.1, 52.5),
  between("always rinsed %", 41.2, 46.2), between("never rinsed %", 22.1, 26.9),
  between("planned %", 60.5, 63.2), between("complaint %", 32.6, 35.9), between("accident %", 1.6, 2.4), between("immersion %", 1.5, 2.5),
  between("declined %", 3.1, 4.6), between("warranty %", 5, 7.6), between("comeback %", 5.1, 7.1), about("abandoned %", 2.5, 0.25),
  about("median salt days", 25.5, 0.06), about("p90 salt days", 65.2, 0.06), between("bench hours a year", 1044, 1121),
];

export const JOBS: readonly Expected[] = [
  about("FULL", 60.7, 0.03), about("EXT", 11, 0.1), about("GEAR", 5.7, 0.15), about("LR", 4.9, 0.15), about("DIAG", 3.9, 0.15), about("SPB", 2.5, 0.25),
  about("HDL", 2.3, 0.25), about("AR", 2.1, 0.25), about("DUNK", 2, 0.25), about("DRAG", 1.9, 0.25), about("BAIL", 1.6, 0.3), about("LW", 1, 0.4), about("SEAL", 0.4, 0.6),
];

/** Tickets of a month over the average month. */
export const MONTHS = [0.84, 1.18, 1.58, 1.4, 1, 0.87, 0.92, 0.91, 1, 1.06, 0.78, 0.47] as const;

export const TRUTHS_SHOW: readonly Expected[] = [
  between("PT1 Whinbeck %", 20, 27), about("PT1 Dovekin %", 5.8, 0.5), about("PT1 Slipdene %", 11.2, 0.25), between("PT1 ratio", 2.6, 4),
  // The note says nine in ten of the bad Ekholt seals are pinched; its own share that fails by age (5.3 of 17.8 in all) allows seven to eight.
  between("PT2 Ekholt %", 15.7, 20.8), between("PT2 pinched of bad %", 68, 90), about("PT2 Bruskar %", 8.3, 0.4),
  about("PT3 a year", 145, 0.1), between("PT3 most of one model %", 28, 39),
  between("PT4 batch %", 74, 88), between("PT4 before %", 36, 47), between("PT4 after %", 31, 50),
  // Fitted here on salt days, and only to bearings whose fitting was seen: fewer spells, so a wider spread than the eight runs'.
  { ...between("PT5 never", 2, 2.5), single: [1.5, 3.8] }, { ...between("PT5 sometimes", 1.2, 1.6), single: [1, 2.2] },
  between("PT6 raw", 1.4, 2.7), { ...between("PT6 unsealed in its water", 0.4, 2.6), single: [0.25, 6] }, about("PT6 complaint %", 57, 0.06),
  about("PT7 2023", 1.35, 0.04), about("PT7 2025", 1.15, 0.03), about("PT8 March", 1.6, 0.06), about("PT8 December", 0.45, 0.12),
  // Tickets of the rare model a year, where the note counts fourteen openings.
  about("PT9 a year", 14, 0.2), between("PT9 %", 3.8, 14),
  about("PT10 before %", 7, 0.3), between("PT10 after %", 99, 100), about("PT10 failed before %", 4, 0.3), about("PT10 failed after %", 6, 0.25),
  between("PT11 minutes", 100, 122), between("PT11 short", 12, 32), about("PT12 a year", 31, 0.1),
  about("PT13 Zetfield", 24, 0.06), about("PT13 Far Lantern", 34, 0.09), about("PT14 years at 1.5 a year", 42, 0.05), between("PT14 a year", 0.5, 2.5),
  about("PT15 planned %", 17, 0.1), about("PT15 other %", 71, 0.06), about("PT15 mix %", 33, 0.06),
];
