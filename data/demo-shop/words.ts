import Papa from "papaparse";
import { complaints, complaintShares, position } from "../../src/records/vocabulary.ts";
import type { Opening } from "./bench.ts";
import { KIND_WORDS } from "./catalogue.ts";
import type { Draws } from "./random.ts";
import faultsCsv from "./settings/faults.csv?raw";
import type { Visit } from "./shop.ts";

interface Fault { part: string; mode: string; salt: string; fresh: string }
const FAULTS = Papa.parse<Fault>(faultsCsv, { header: true, skipEmptyLines: true }).data;

/** What is wrong with a failed part, as the bench would call it; a pinched seal always is. */
export function modeOf(opening: Opening, salty: boolean, draw: Draws): string {
  if (opening.pinched) return "pinched";
  const own = FAULTS.filter((fault) => fault.part === opening.position);
  const faults = own.length > 0 ? own : FAULTS.filter((fault) => fault.part === position(opening.position).family);
  return draw.weighted(faults, faults.map((fault) => Number(salty ? fault.salt : fault.fresh))).mode;
}

const spellings = (code: string): readonly string[] => complaints.find((row) => row.code === code)?.spellings ?? [];

/** Complaints a fault of this family leads to where the vocabulary names none for the position. */
const BY_FAMILY: Readonly<Record<string, string>> = { screw: "C25", seal: "C17", knob: "C18", "lever or pawl": "C05", spring: "C05" };
const DUNKED = ["dunked", "dropped in sea", "went under", "flooded"];

function complained(code: string, kind: Visit["reel"]["plan"]["model"]["kind"], draw: Draws): string {
  const shares = complaintShares.filter((row) => row.reel_kind === KIND_WORDS[kind] && row.positions.includes(code));
  if (shares.length > 0) return draw.weighted(shares, shares.map((row) => row.share)).code;
  return BY_FAMILY[position(code).family] ?? "C03";
}

/** What the customer said when the reel was taken in. */
export function complaintWords(visit: Visit, draw: Draws): string {
  const { model } = visit.reel.plan;
  if (visit.source === "planned") return draw.pick(spellings("C27"));
  if (visit.source === "immersion") return draw.pick(DUNKED);
  if (visit.source === "accident") return visit.job === "BAIL" ? draw.pick(["bail bent", "dropped", "trodden on"]) : draw.pick(["bent handle", "dropped", "snapped"]);
  const at = visit.place ?? -1, code = at < 0 ? "C17" : complained(visit.reel.plan.places[at]?.life.position ?? "body_seal", model.kind, draw);
  const words = draw.pick(spellings(code).filter((one) => !DUNKED.includes(one)));
  return visit.comeback && draw.chance(0.4) ? `${draw.pick(spellings("C30"))}, ${words}` : words;
}

/** How the people at the bench write the parts they name most: in full, and in short. */
const SHORT: Readonly<Record<string, readonly [full: string, short: string]>> = {
  line_roller_bearing: ["line roller bearing", "LR brg"], line_roller: ["line roller", "l/roller"], ar_clutch: ["one way clutch", "AR brg"],
  main_bearing_handle: ["main bearing", "main brg"], main_bearing_plate: ["off side bearing", "LH bearing"],
  pinion_bearing_front: ["pinion bearing", "pinion brg"], drag_washer_friction: ["drag washers", "drags"], drag_knob_seal: ["drag knob seal", "drag cap oring"],
  main_gear: ["main gear", "main gear"], frame_screws: ["frame screws", "plate screws"], clutch_springs: ["yoke spring", "yoke spring"],
  body_seal: ["body seal", "body seal"], bail_spring: ["bail spring", "bail spr"], spool_bearing_left: ["left spool bearing", "spool brg"],
  spool_bearing_right: ["right spool bearing", "spool brg"], lw_pawl: ["level wind pawl", "pawl"], knob_bearing: ["knob bearing", "knob brg"],
};
export const spoken = (code: string, short: boolean) => SHORT[code]?.[short ? 1 : 0] ?? position(code).name.toLowerCase().replace(/ \/.*| \(.*|,.*/, "");

/** One letter doubled, dropped or changed places, as tired fingers do. */
export function typo(text: string, draw: Draws): string {
  const at = 1 + draw.below(Math.max(1, text.length - 2)), a = text.slice(0, at), b = text[at] ?? "", rest = text.slice(at + 1);
  return draw.weighted([a + rest, a + b + b + rest, a + (rest[0] ?? "") + b + rest.slice(1)], [1, 1, 1]);
}

/** The bench's note: the senior writes words, the junior abbreviations, the owner almost nothing. */
export function note(visit: Visit, faults: readonly { position: string; mode: string }[], draw: Draws): string {
  const writes = { T1: 0.5, T2: 0.45, OWN: 0.12 }[visit.technician];
  if (visit.started === null || !draw.chance(writes)) return "";
  const short = visit.technician === "T2", names = faults.slice(0, 3).map((fault) => spoken(fault.position, short)), [first, second] = names;
  const mode = faults[0]?.mode ?? "", repl = short ? "repl" : "replaced", waits = visit.openings.some((opening) => opening.wait_until !== null);
  const texts = first === undefined
    ? [short ? "svc. all ok" : "full strip clean & lube, all fine", "as usual", "no prob found, cleaned, tested 6kg", "see last time"]
    : visit.source === "immersion" ? [`stripped same day, ${names.join(", ")} gone`]
      : [`${first} ${mode}, ${repl}`, short ? `svc. ${names.join(", ")} ${repl}` : `full strip clean & lube, ${names.slice(0, 2).join(" + ")} new`,
        second === undefined ? `${first} ${mode}` : `${first} ${mode}. ${second} ${repl}`, ...(waits ? [`${first} ${mode}. o/o ${short ? "ZF" : "Zetfield"}`] : [])];
  const text = draw.pick(visit.job === "FULL" || first !== undefined ? texts : ["done", "cleaned and oiled", "as usual"]);
  return draw.chance(0.04) ? typo(text, draw) : text;
}
