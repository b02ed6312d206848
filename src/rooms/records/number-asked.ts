import { COUNTED, type NumberAsked } from "../../answers/behind/behind.ts";
import { CLOCKS } from "../../answers/wear/wear.ts";
import { position, positionNamed } from "../../records/vocabulary.ts";
import { date } from "../../ui/format.ts";
import type { BehindValues } from "../../ui/rows-behind-link.ts";
import { named } from "./merges-rows.ts";

const given = (value: string) => (value === "" ? null : value);

/** The number that an address asks about; null where it asks about none. */
export function numberAsked(of: BehindValues): NumberAsked | null {
  const counted = COUNTED.find((one) => one === of.of);
  return counted === undefined ? null : {
    of: counted, position: given(of.position), part: given(of.part), job: given(of.job),
    reel_kind: given(of.kind), maker: given(of.maker), model: given(of.model), water: given(of.water), from: given(of.from), to: given(of.to),
    opening: of.opening === "planned" || of.opening === "complaint" ? of.opening : "*",
    denominator: of.counted === "written" ? "strict" : "coverage", clock: CLOCKS.find((one) => one === of.clock) ?? "salt_days", first_sights: "planned",
  };
}

/** Name of a place in a reel; one of the shop's own stays as it is. */
export const placeName = (code: string | null): string | null => (code !== null && positionNamed(code) === code ? position(code).name : code);

const SUBJECTS: Readonly<Record<NumberAsked["of"], (asked: NumberAsked) => string>> = {
  inspections: (asked) => placeName(asked.position) ?? "Parts",
  comebacks: (asked) => `Comebacks of ${(placeName(asked.position) ?? "parts").toLowerCase()}`,
  parts: (asked) => `Wear of ${(placeName(asked.position) ?? "parts").toLowerCase()}`,
  pieces: ({ part }) => `Use of ${part ?? "parts"}`,
  jobs: ({ job }) => `Finished jobs${job === null ? "" : `, ${job}`}`,
  reels: () => "Reels that came in",
};

/** What the number is about, with its filter: the heading of the list. */
export function askedWords(asked: NumberAsked): string {
  const { reel_kind, maker, model, water, from, to, opening, denominator } = asked, looks = asked.of === "inspections";
  const words = [
    SUBJECTS[asked.of](asked), model === null ? maker : named({ maker, model }), reel_kind === null ? null : `${reel_kind} reels`,
    looks && opening !== "*" ? (opening === "planned" ? "planned work" : "came in with something wrong") : null, looks && denominator === "strict" ? "only what was written" : null,
    water === null ? null : `${water} water`, from === null ? null : `from ${date(from)}`, to === null ? null : `to ${date(to)}`,
  ];
  return words.filter((word) => word !== null && word !== "").join(", ");
}
