import type { ReelKind } from "../vocabulary-tables.ts";

/** What stands around a phrase that could name several positions. */
export interface Around {
  readonly reel_kind: ReelKind | null;
  /** Words within four of it: of the same breath, and of the same sentence; and all of the note with its complaint. */
  readonly breath: ReadonlySet<string>;
  readonly near: ReadonlySet<string>;
  readonly note: ReadonlySet<string>;
  readonly plural: boolean;
}
type Reading = (around: Around) => readonly string[];

const has = (words: ReadonlySet<string>, ...wanted: string[]) => wanted.some((word) => words.has(word));
const revolving = (kind: ReelKind | null) => kind === "conventional" || kind === "baitcaster";
/** One position on spinning reels, one on revolving-spool reels, one on fly reels; none where the kind is not known. */
const byKind = (spinning: string | null, turning: string | null, fly: string | null): Reading => ({ reel_kind }) => {
  const place = reel_kind === "spinning" ? spinning : revolving(reel_kind) ? turning : reel_kind === "fly" ? fly : null;
  return place === null ? [] : [place];
};
/** The one-way clutch has one name on fly reels and another on the rest; the words alone prove which part is meant. */
const oneWay: Reading = ({ reel_kind }) => [reel_kind === "fly" ? "fly_oneway" : "ar_clutch"];
const drag: Reading = ({ reel_kind }) => [reel_kind === "fly" ? "fly_drag_disc" : "drag_washer_friction"];

const clicking: Reading = ({ reel_kind }) =>
  reel_kind === "spinning" ? ["spool_click"] : reel_kind === "fly" ? ["fly_click"] : reel_kind === "conventional" ? ["clicker"] : [];

const roller: Reading = ({ reel_kind, breath, note, plural }) => {
  if (reel_kind === "fly") return [];
  if (has(breath, "needle", "oneway", "clutch", "ar") || (plural && has(note, "ar", "oneway", "clutch"))) return ["ar_rollers"];
  return reel_kind === "spinning" && !plural ? ["line_roller"] : [];
};

const rollerBearing: Reading = ({ reel_kind, near, note }) => {
  const clutch = has(near, "clutch", "oneway", "ar") || has(note, "slip", "slipping", "slipped", "reverse", "backward");
  const line = has(note, "line", "lineroller", "bail", "twist", "squeal", "squeak");
  if (clutch === line) return [];
  return clutch ? oneWay({ reel_kind, note, near: note, breath: note, plural: false }) : reel_kind === "spinning" ? ["line_roller_bearing"] : [];
};

const clutch: Reading = ({ reel_kind, breath, near, note }) => {
  if (reel_kind === null && has(note, "ar", "oneway")) return ["ar_clutch"];
  if (has(breath, "ar", "oneway")) return reel_kind === null ? ["ar_clutch"] : oneWay({ reel_kind, breath, near, note, plural: false });
  if (reel_kind === "fly") return ["fly_oneway"];
  if (revolving(reel_kind) && has(note, "ar", "oneway") && !has(near, "yoke", "bar", "freespool", "lever")) return ["ar_clutch"];
  if (reel_kind !== "spinning") return [];
  const old = has(note, "drag", "fish") && !has(note, "backward", "ar", "reverse", "handle", "cold");
  return old ? [] : ["ar_clutch"];
};

const pawl: Reading = ({ reel_kind, breath, near, note }) => {
  if (has(breath, "ar", "dog", "reverse", "ratchet")) return ["ar_dog"];
  if (has(breath, "click", "clicker", "bait")) return clicking({ reel_kind, breath, near, note, plural: false });
  if (revolving(reel_kind)) return ["lw_pawl"];
  if (reel_kind === "fly") return ["fly_click"];
  return reel_kind === "spinning" && has(near, "slider", "worm", "oscillation") ? ["osc_pawl"] : [];
};

const mainBearing: Reading = ({ reel_kind, breath, plural }) => {
  if (has(breath, "rotor", "head") && reel_kind === "spinning") return ["pinion_bearing_front"];
  return plural && reel_kind === "spinning" ? ["main_bearing_handle", "main_bearing_plate"] : reel_kind === "fly" ? [] : ["main_bearing_handle"];
};

/** A spinning reel's pinion runs in one bearing before and one behind it; the one everybody means is the front one. */
const pinionBearing: Reading = ({ reel_kind, near, plural }) => {
  if (reel_kind === "spinning" && plural && (has(near, "both") || (has(near, "front") && has(near, "rear", "back")))) {
    return ["pinion_bearing_front", "pinion_bearing_rear"];
  }
  return byKind("pinion_bearing_front", "pinion_bearing_rear", null)({ reel_kind, breath: near, near, note: near, plural });
};

const sidePlate: Reading = ({ reel_kind, breath, plural }) =>
  revolving(reel_kind) && plural && !has(breath, "left", "right", "palm", "handle") ? ["side_plate_r", "side_plate_l"] :
  reel_kind === "spinning" ? ["side_cover"] : revolving(reel_kind)
    ? [has(breath, "left", "palm") && !has(breath, "right") ? "side_plate_l" : "side_plate_r"] : [];

const lever: Reading = ({ reel_kind, near, note }) => {
  if (reel_kind === "spinning") return has(near, "ar", "reverse", "silencer") ? ["ar_selector"] : [];
  if (reel_kind === "conventional" && has(note, "freespool") && !has(near, "drag")) return [];
  return reel_kind === "conventional" ? ["drag_lever"] : reel_kind === "baitcaster" ? ["freespool_lever"] : [];
};

const washer: Reading = ({ reel_kind, near, note, plural }) => {
  const soft = (plural || has(near, "glazed", "carbon", "felt", "fibre", "oily", "torn", "shredded", "compressed")) && has(note, "drag");
  return has(near, "drag") || soft ? drag({ reel_kind, breath: near, near, note, plural: false }) : [];
};

/** Felts are of the drag; a felt elsewhere (under a tension knob) is not. */
const felt: Reading = ({ reel_kind, near, note, plural }) =>
  (reel_kind === "spinning" || plural || has(note, "drag")) && !has(near, "tension", "cast") ? drag({ reel_kind, breath: near, near, note, plural }) : [];
/** On a spinning reel the drag has a knob too: a bare one beside drag words is not the handle's for sure. */
const knob: Reading = ({ reel_kind, near, note }) => {
  if (reel_kind === "spinning" && has(near, "drag") && !has(note, "handle")) return ["drag_knob"];
  if (reel_kind === "spinning" && has(note, "drag") && !has(note, "handle", "bearing", "bush", "grip")) return [];
  return reel_kind === "fly" || reel_kind === null ? [] : ["handle_knob"];
};

const metalWasher: Reading = ({ reel_kind, note }) => (has(note, "drag", "carbon") && reel_kind !== "fly" && reel_kind !== null ? ["drag_washer_keyed"] : []);

/** Two gears or a set are the main gear and its pinion; one named beside the pinion is the main gear. */
const gear: Reading = ({ reel_kind, near, plural }) => {
  if (reel_kind === "fly" || reel_kind === null) return [];
  if (has(near, "set") || plural) return ["main_gear", "pinion_gear"];
  return has(near, "pinion") ? ["main_gear"] : [];
};

const sleeve: Reading = ({ reel_kind, near, breath, note }) => {
  if (revolving(reel_kind) && has(near, "dog", "ratchet")) return ["gear_shaft"];
  if (has(reel_kind === "spinning" ? breath : near, "pinion", "star", "gear", "spacer") || reel_kind === "fly") return [];
  return has(note, "ar", "oneway", "clutch", "arb", "owb", "owc") ? ["ar_sleeve"] : [];
};

/** A bare spring is the bail's where the note speaks of the bail and of nothing else with a spring. */
const spring: Reading = ({ reel_kind, note }) =>
  reel_kind === "spinning" && has(note, "bail") && !has(note, "ar", "oneway", "clutch", "dog", "click", "clicker", "pawl", "drag", "knob", "trip")
    ? ["bail_spring"] : [];
const clip: Reading = ({ reel_kind, note }) => (reel_kind === "spinning" && has(note, "drag", "felt") && !has(note, "line", "dog", "bearing")
  ? ["drag_clip"] : []);
/** A seized or stripped screw of no other name is one of those that hold the body or the frame together. */
const screw: Reading = ({ reel_kind, near, note }) => {
  if (has(note, "handle", "knob", "bail", "foot", "rotor", "clamp", "slider", "cap", "lineroller")) return [];
  const stuck = has(near, "seized", "stripped", "snapped", "stuck", "sheared", "drilled");
  return stuck && reel_kind === "spinning" ? ["side_cover_screws"] : stuck && revolving(reel_kind) ? ["frame_screws"] : [];
};
const bush: Reading = ({ reel_kind, near, note }) => {
  if (reel_kind === "fly") return ["fly_spool_bearing"];
  if (revolving(reel_kind) && (has(near, "worm", "levelwind")
    || (has(note, "worm", "levelwind") && !has(note, "knob", "handle", "pinion")))) return ["lw_bush"];
  return reel_kind === "spinning" && has(near, "lineroller") ? ["line_roller_bush"] : [];
};
const arSpring: Reading = ({ reel_kind, plural }) => (plural && reel_kind !== "fly" ? ["ar_springs"] : []);
const disc: Reading = ({ reel_kind, note }) => (reel_kind === "fly" ? ["fly_drag_disc"] : reel_kind === "conventional" && has(note, "lever")
  ? ["drag_plate"] : []);
const cam: Reading = ({ reel_kind, note }) => {
  if (!revolving(reel_kind)) return [];
  if (reel_kind === "conventional" && has(note, "lever") && has(note, "drag")) return ["drag_lever"];
  return has(note, "yoke", "freespool", "clutch", "eccentric", "thumbbar") ? ["clutch_cam"] : [];
};
const dial: Reading = ({ reel_kind, note }) => (reel_kind === "baitcaster" && has(note, "brake", "mag", "magnet", "centrifugal") ? ["brake_dial"] : []);
const capSeal: Reading = ({ reel_kind, note }) => (revolving(reel_kind) && !has(note, "pawl", "nut", "handle", "knob") ? ["cast_control_seal"] : []);
const pawlSpring: Reading = ({ reel_kind, note }) =>
  reel_kind === "fly" ? ["fly_click_spring"] : reel_kind === "conventional" && has(note, "clicker", "click") ? ["clicker_spring"] : [];
const mains: Reading = ({ reel_kind, near, breath, plural }) => (!plural && reel_kind !== "fly" && has(near, "pinion", "teeth", "tooth") && !has(near, "bearing")
  && !has(breath, "bearing") ? ["main_gear"] : !plural ? [] : reel_kind === "spinning" ? ["main_bearing_handle", "main_bearing_plate"] : []);
/** "Pinion & drive ok": the drive gear. */
const drive: Reading = ({ reel_kind, breath, near }) => (reel_kind !== "fly" && has(near, "pinion") && !has(breath, "bearing", "shaft", "bush") ? ["main_gear"] : []);
/** On a baitcaster the blocks of the brake run in a ring; elsewhere a ring is too much. */
const ring: Reading = ({ reel_kind, note }) => (reel_kind === "baitcaster" && has(note, "brake", "block") ? ["brake_drum"]
  : reel_kind === "conventional" ? ["plate_ring"] : []);
const arm: Reading = ({ reel_kind, note }) => (reel_kind === "spinning" && has(note, "bail") ? ["bail_arm"] : []);
const plate: Reading = ({ reel_kind, note, plural }) => (reel_kind === "conventional" && plural && has(note, "lever") ? ["drag_plate"] : []);
const lip: Reading = ({ reel_kind, note }) => (reel_kind === "spinning" && has(note, "spool") ? ["spool_lip"] : []);
const shaft: Reading = ({ reel_kind, near, breath }) => (reel_kind === "spinning" && !has(breath, "knob", "handle", "worm", "drive")
  && has(near, "greased", "oiled", "lubed", "ok", "worn", "scored", "dry", "good", "fine", "rusty", "pitted", "bent", "straightened", "straight", "true",
    "polished", "slider", "spool", "pinion", "cleaned") ? ["main_shaft"] : []);
const block: Reading = ({ reel_kind, note }) => (reel_kind === "baitcaster" && has(note, "brake", "centrifugal") ? ["brake_blocks"] : []);
/** A bare shim is one of the spool's where the trouble is how the line lies. */
const shim: Reading = ({ reel_kind, note }) => {
  if (revolving(reel_kind)) return has(note, "cast", "tension", "copper") && !has(note, "gear", "maingear", "mesh", "pinion") ? ["cast_control_shim"] : [];
  if (reel_kind !== "spinning" || has(note, "bearing", "handle", "roller", "lineroller")) return [];
  if (has(note, "mesh", "maingear", "gear")) return has(note, "spool", "lay") ? [] : ["main_gear_shim"];
  return has(note, "lay", "piling", "cone", "coning", "bunching", "banking", "spool") ? ["spool_shim"] : [];
};
/** A lock screw holds the handle nut on revolving spools, and the rotor nut where the note speaks of a rotor. */
const lockScrew: Reading = ({ reel_kind, note }) =>
  (revolving(reel_kind) ? ["handle_nut_lock"] : reel_kind === "spinning" && has(note, "rotor") ? ["rotor_nut_lock"] : []);
/** The cover of a conventional reel that has a seal is that of its drag. */
const coverSeal: Reading = ({ reel_kind, note }) =>
  reel_kind === "spinning" ? ["body_seal"] : reel_kind === "conventional" && has(note, "drag") ? ["drag_drum_seal"] : [];
const spacer: Reading = ({ reel_kind, note }) => (revolving(reel_kind) && has(note, "star") ? ["star_spacer"] : []);
const hubSeal: Reading = ({ reel_kind, near }) => (reel_kind === "fly" && has(near, "hub", "cartridge") ? ["fly_hub_seal"] : []);

const housingSeal: Reading = ({ reel_kind }) => (reel_kind === "fly" ? ["fly_hub_seal"] : reel_kind === "conventional" ? ["drag_drum_seal"] : []);

/** Readings of phrases with several meanings (trade brief 2.2 and common practice, no source). */
const READ: ReadonlyMap<string, Reading> = new Map<string, Reading>([
  ["roller", roller], ["roller bearing", rollerBearing], ["bearing roller", rollerBearing], ["clutch", clutch], ["pawl", pawl],
  ["click", clicking], ["clicker", clicking], ["click pawl", clicking], ["click tongue", clicking], ["tongue", clicking], ["click and pawl", clicking],
  ["main bearing", mainBearing], ["main gear shaft bearing", mainBearing], ["maingear shaft bearing", mainBearing],
    ["main bearing handle side", () => ["main_bearing_handle"]], ["sideplate", sidePlate], ["lever", lever],
  ["spool shaft bearing", byKind("spool_support_brg", "spool_bearings_pair", null)],
  ["handle bearing", ({ breath }) => (has(breath, "knob", "grip") ? ["knob_bearing"] : [])],
  ["drag seal", ({ reel_kind }) => (reel_kind === "spinning" ? ["drag_knob_seal"] : reel_kind === "conventional" ? ["drag_drum_seal"] : reel_kind === "fly"
    ? ["fly_hub_seal"] : [])],
  ["spool bearing", byKind("spool_support_brg", "spool_bearings_pair", "fly_spool_bearing")],
  ["sp bearing", byKind("spool_support_brg", "spool_bearings_pair", "fly_spool_bearing")], ["sb", byKind(null, "spool_bearings_pair", null)],
  ["spool hub bearing", byKind("spool_support_brg", "spool_bearings_pair", "fly_spool_bearing")],
  ["bearing under pinion", byKind(null, "pinion_bearing_rear", null)], ["bearing behind pinion", byKind(null, "pinion_bearing_rear", null)],
  ["drive bearing", mainBearing], ["main gear bearing", mainBearing], ["maingear bearing", mainBearing], ["gear bearing", mainBearing],
  ["dial", dial], ["cap seal", capSeal], ["cap oring", capSeal], ["pawl spring", pawlSpring], ["drive gear bearing", mainBearing],
    ["lock plate", byKind("rotor_nut_lock", "handle_nut_lock", null)], ["felt", felt],
  ["nut retainer", byKind("rotor_nut_lock", "handle_nut_lock", null)], ["nut keeper", byKind("rotor_nut_lock", "handle_nut_lock", null)],
    ["handle lock screw", byKind("handle_screw", "handle_nut_lock", null)],
  ["gear", gear],
  ["gear set", ({ reel_kind }) => (reel_kind !== "fly" && reel_kind !== null ? ["main_gear", "pinion_gear"] : [])],
  ["worm", byKind("osc_worm", "lw_worm", null)], ["worm shaft", byKind("osc_worm", "lw_worm", null)], ["worm gear", byKind("osc_worm", "lw_worm", null)],
  ["cross gear", byKind("osc_worm", "lw_worm", null)],
  ["worm bearing", byKind("osc_bearing", "lw_bush", null)], ["worm bush", byKind("osc_bearing", "lw_bush", null)],
  ["idler gear", byKind("osc_gear", "lw_idler", null)], ["idle gear", byKind("osc_gear", "lw_idler", null)], ["idler", byKind(null, "lw_idler", null)],
  ["spool", byKind("spool", "rs_spool", "fly_spool")], ["spool rim", byKind("spool_lip", null, "fly_spool")], ["frame", byKind(null, "frame", "fly_frame")],
  ["click spring", ({ reel_kind, note }) => (revolving(reel_kind) && has(note, "star") ? ["star_click"] : reel_kind === "spinning"
    ? ["spool_click_spring"] : reel_kind === "fly" ? ["fly_click_spring"] : reel_kind === "conventional" ? ["clicker_spring"] : [])],
  ["check spring", byKind(null, null, "fly_click_spring")], ["check", byKind(null, null, "fly_click")], ["cork", byKind(null, null, "fly_drag_disc")],
  ["drag knob", byKind("drag_knob", null, "fly_drag_knob")], ["drag knob oring", byKind("drag_knob_seal", null, "fly_knob_seal")],
  ["drag knob seal", byKind("drag_knob_seal", null, "fly_knob_seal")], ["knob oring", byKind(null, null, "fly_knob_seal")],
  ["drag spring", byKind(null, null, "fly_drag_spring")], ["spring washer", byKind(null, "belleville", "fly_drag_spring")],
    ["disc spring", byKind(null, "belleville", "fly_drag_spring")],
  ["tension knob", byKind("drag_knob", "cast_control_cap", null)], ["clutch spring", byKind("ar_springs", "clutch_springs", null)],
    ["clutch pin", byKind("ar_rollers", "spool_pin", null)],
  ["handle", byKind("handle_arm", "handle_arm", "fly_handle")], ["knob", knob], ["grip", byKind("handle_knob", "handle_knob", null)],
  ["pinion bearing", pinionBearing], ["pin bearing", pinionBearing],
  ["sideplate screw", byKind("side_cover_screws", "frame_screws", null)], ["sideplate seal", byKind("body_seal", "plate_seal", null)],
  ["sideplate oring", byKind("body_seal", "plate_seal", null)], ["sideplate gasket", byKind("body_seal", "plate_seal", null)],
    ["gasket sideplate", byKind("body_seal", "plate_seal", null)],
  ["plate screw", byKind("side_cover_screws", "frame_screws", null)],
  ["oneway clutch", oneWay], ["oneway clutch bearing", oneWay], ["ar clutch bearing", oneWay], ["oneway bearing", oneWay], ["bearing oneway", oneWay],
    ["clutch oneway", oneWay], ["oneway", oneWay], ["ar", oneWay], ["ar clutch", oneWay], ["ar bearing", oneWay],
  ["oneway roller bearing", oneWay], ["clutch bearing", oneWay],
    ["oneway roller", ({ reel_kind, plural }) => (reel_kind === "fly" ? ["fly_oneway"] : plural ? ["ar_rollers"] : ["ar_clutch"])],
  ["drag", drag], ["drag washer", drag], ["drag disc", drag], ["washer", washer], ["metal washer", metalWasher], ["steel washer", metalWasher],
  ["lineroller", () => ["line_roller"]], ["sleeve", sleeve], ["brake", byKind(null, "brake_blocks", null)],
    ["ratchet", byKind("ar_ratchet", "ar_ratchet", "fly_click")],
  ["ring", ring], ["arm", arm], ["plate", plate], ["lip", lip], ["knob seal", byKind(null, null, "fly_knob_seal")],
  ["screw", screw], ["foot", ({ reel_kind }) => (reel_kind === null ? [] : ["body_foot"])], ["bearing", () => []], ["spring", spring],
    ["spool bush", byKind("spool_support", null, "fly_spool_bearing")], ["clip", clip], ["metal", metalWasher],
    ["clicker spring", byKind("spool_click_spring", "clicker_spring", "fly_click_spring")], ["seal", hubSeal], ["oring", hubSeal],
  ["gasket", byKind("body_seal", null, null)], ["ar spring", arSpring], ["shim", shim], ["bush", bush], ["main", mains], ["drive", drive], ["shaft", shaft],
    ["spacer", spacer], ["disc", disc], ["block", block], ["cam", cam],
  ["preset", byKind(null, "preset_knob", null)], ["lock screw", lockScrew], ["return spring", byKind(null, "clutch_kick", null)],
  ["cover seal", coverSeal], ["cover oring", coverSeal],
  ["kick lever", byKind("bail_trip", "clutch_kick", null)], ["worm shaft bearing", byKind("osc_bearing", "lw_bush", null)],
  ["drag housing oring", housingSeal], ["drag housing seal", housingSeal],
]);

/** With names of two words also the other way round ("bearing main"). */
const BOTH_WAYS: ReadonlyMap<string, Reading> = new Map([...[...READ].map(([phrase, reading]) => [phrase.split(" ").reverse().join(" "), reading] as const),
  ...READ]);
/** Every phrase with several meanings. */
export const ambiguousPhrases: readonly string[] = [...READ.keys()];
/** Whether a phrase has several meanings. */
export const isAmbiguous = (phrase: string): boolean => READ.has(phrase);

/** The positions a phrase with several meanings stands for here: empty when it must be asked; null when the phrase has one meaning. */
export function readAmbiguous(phrase: string, around: Around): readonly string[] | null {
  return BOTH_WAYS.get(phrase)?.(around) ?? null;
}
