import type { LikelyCause, PartChance } from "../../answers/card/chances.ts";
import type { PartToPull } from "../../answers/card/parts-to-pull.ts";
import type { ReelCard, ReelOnBench } from "../../answers/card/reel-card.ts";
import { modelName } from "../../answers/model-name.ts";
import type { BenchNote } from "../../records/vocabulary.ts";
import { shareTone, type PartFigures } from "../../ui/exploded/drawn-part.ts";
import { count, DASH, FEWEST_FOR_PERCENT, money, number, percent, percentRange } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";

const right = { align: "right" } as const;

/** The reel and what is known of its life, in one line. */
export function reelLine(reel: ReelOnBench): string {
  const { reel_kind, model, water, rinse, days, months } = reel;
  return [
    model === null ? `Any ${reel_kind} reel` : `${modelName({ maker: reel.maker, model })}, ${reel_kind}`, water === null ? "water not known" : `${water} water`, rinse === null ? "rinsing not known" : `${rinse} rinsed`,
    days === null ? "" : count(days, water === "fresh" ? "day fished" : "salt day", water === "fresh" ? "days fished" : "salt days"), months === null ? "" : count(months, "month since service", "months since service"),
  ].filter((word) => word !== "").join(", ");
}

/** Causes told; rarer ones only lengthen the sheet. */
const LEAST_TOLD = 0.03;
export const toldCauses = (causes: readonly LikelyCause[]): readonly LikelyCause[] => causes.filter(({ here }, at) => at < 2 || here >= LEAST_TOLD).slice(0, 5);

const named = (chances: readonly PartChance[], position: string) => chances.find((one) => one.position === position)?.position_name ?? position.replaceAll("_", " ");

/** A cause by the names of its parts, else as the trade says it. */
export const causeName = ({ cause, positions }: LikelyCause, chances: readonly PartChance[]): string =>
  positions.length === 0 ? cause : [...new Set(positions.map((position) => named(chances, position)))].join(" or ");

/** What the complaint may be. */
export const causeColumns = (chances: readonly PartChance[], own_tickets: number): readonly Column<LikelyCause>[] => [
  { key: "cause", label: "Likely cause", value: (row) => causeName(row, chances) },
  { key: "here", label: "On this reel", ...right, value: (row) => row.here, text: (row) => `about ${percent(row.here)}` },
  {
    key: "own", label: "This shop's jobs", ...right, value: (row) => row.own,
    text: (row) => (own_tickets === 0 ? DASH : `${number(row.own, Number.isInteger(row.own) ? 0 : 1)} of ${number(own_tickets)}`),
  },
  { key: "usual", label: "Common practice", ...right, value: (row) => row.usual, text: (row) => (row.usual === null ? DASH : `${number(row.usual * 100)} in 100`) },
];

/** How sure the table of causes is, in words. */
export function causesSentence({ causes }: ReelCard): string {
  if (causes === null) return "";
  const own = count(causes.own_tickets, "finished job", "finished jobs");
  if (causes.own_tickets === 0) return "This shop has no finished job with this complaint on such reels: the list is common practice, a bench man's estimate and no count.";
  return causes.leans_on === "common practice"
    ? `Mostly common practice, which counts like ten jobs; this shop has ${own} with this complaint on such reels.`
    : `Mostly this shop's own ${own} with this complaint on such reels; common practice counts like ten more.`;
}

/** Parts told, likeliest first; those that the causes of the complaint tell already are not told again. */
export function toldChances({ chances, causes }: Pick<ReelCard, "chances" | "causes">): readonly PartChance[] {
  const told = causes === null ? [] : toldCauses(causes.causes).flatMap(({ positions }) => positions);
  return chances.filter(({ position }) => !told.includes(position)).filter(({ chance }, at) => at < 3 || chance >= 0.05).slice(0, causes === null ? 8 : 5);
}

const FROM: Readonly<Record<PartChance["from"], string>> = {
  "salt days": "worn by so many salt days", "days fished": "worn by so many days", months: "worn by so many months", "this model": "this model, planned services", "all reels of the kind": "all such reels, planned services",
};

/** The chance of each part. */
export const CHANCE_COLUMNS: readonly Column<PartChance>[] = [
  { key: "part", label: "Part", value: (row) => row.position_name },
  { key: "chance", label: "Has failed", ...right, value: (row) => row.chance, text: (row) => (row.n < FEWEST_FOR_PERCENT ? DASH : percent(row.chance)) },
  { key: "low", label: "Likely", value: (row) => row.low, text: (row) => (row.n < FEWEST_FOR_PERCENT ? "too few to say" : percentRange(row.low, row.high)) },
  { key: "n", label: "Seen failed", ...right, value: (row) => row.failed, text: (row) => `${number(row.failed)} of ${number(row.n)}` },
  { key: "from", label: "From", value: (row) => FROM[row.from] },
];

const SHELF: Readonly<Record<PartToPull["shelf"], string>> = { there: "on the shelf", "not enough": "not enough: order", "not known": "shelf not known", "look into the drawer": "look into the drawer" };
const LEAD_FROM = { observed: "", quoted: " quoted", assumed: " assumed" } as const;

/** Parts to have ready. */
export const pullColumns = (chances: readonly PartChance[], currency: string): readonly Column<PartToPull>[] => [
  { key: "name", label: "Part", value: (row) => row.name ?? row.part_no },
  { key: "part_no", label: "Number", value: (row) => row.part_no },
  { key: "for", label: "For", value: (row) => row.positions.map((position) => named(chances, position)).join(", ") },
  { key: "qty", label: "Pieces", ...right, value: (row) => row.qty, text: (row) => number(row.qty) },
  { key: "shelf", label: "Shelf", value: (row) => SHELF[row.shelf], text: (row) => (row.on_hand === null ? SHELF[row.shelf] : `${number(row.on_hand)} ${SHELF[row.shelf] === "on the shelf" ? "there" : `there, ${SHELF[row.shelf]}`}`) },
  { key: "lead", label: "Delivery", ...right, value: (row) => row.lead_days, text: (row) => (row.lead_days === null ? DASH : `${number(row.lead_days)} days${row.lead_from === null ? "" : LEAD_FROM[row.lead_from]}`) },
  { key: "cost", label: "Cost each", ...right, value: (row) => row.unit_cost, text: (row) => money(row.unit_cost, currency, 2) },
];

/** Positions to look at that no part number is written for. */
export const unwrittenSentence = ({ pull: { unwritten }, chances, reel }: ReelCard): string =>
  unwritten.length === 0 || reel.model === null ? "" : `No part number is written for ${unwritten.map((position) => named(chances, position).toLowerCase()).join(", ")} on this model.`;

/** The drawing's parts: toned by the chance, marked where to look first. */
export function drawnChances({ chances, look_at }: ReelCard, href: (position: string) => string): readonly PartFigures[] {
  return chances.map((one) => ({
    position: one.position, name: one.position_name, href: href(one.position),
    figures: one.n < FEWEST_FOR_PERCENT ? `${number(one.failed)} of ${number(one.n)}` : `${percentRange(one.low, one.high)} failed`,
    word: look_at.slice(0, 3).includes(one.position) ? "look here first" : null, tone: shareTone(one.n < FEWEST_FOR_PERCENT ? null : one.chance),
  }));
}

/** Bench notes of one kind that hold for this kind of reel, those without a group last. */
export const notesOf = (notes: readonly BenchNote[], kinds: readonly BenchNote["kind"][], reel_kind: string): readonly string[] =>
  notes.filter((note) => kinds.includes(note.kind) && note.reel_kinds.some((kind) => kind === reel_kind)).map(({ text }) => text);

/** What is measured before the reel goes out. */
export const TO_WRITE = ["back-turn, degrees", "drag at the start", "drag running", "free spool, seconds", "bail opened and closed, times", "seal test: yes or no"];
