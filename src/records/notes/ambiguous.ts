import type { ReelKind } from "../vocabulary-tables.ts";

export interface Around {
  readonly reel_kind: ReelKind | null;
  /** Words of the same item, and of the whole note with its complaint. */
  readonly near: ReadonlySet<string>;
  readonly note: ReadonlySet<string>;
  readonly plural: boolean;
}

const has = (words: ReadonlySet<string>, ...wanted: string[]) => wanted.some((word) => words.has(word));
const revolving = (kind: ReelKind | null) => kind === "conventional" || kind === "baitcaster";

/**
 * The positions a phrase with several meanings stands for, from its neighbours and the kind of reel; empty when it must be asked.
 * Phrases that are not listed here are not ambiguous and give null. (Readings: common practice, no source.)
 */
const READ: Readonly<Record<string, (around: Around) => string[]>> = {
  roller: ({ reel_kind, near }) =>
    has(near, "needle", "oneway", "clutch") ? ["ar_rollers"] : reel_kind === "spinning" ? ["line_roller"] : [],
  "roller bearing": ({ reel_kind, note }) => {
    const clutch = has(note, "clutch", "oneway", "ar", "slip", "slipping", "reverse", "backward", "backwards"), line = has(note, "line", "lineroller", "bail", "twist", "squeal", "squeak");
    if (clutch === line) return [];
    return clutch ? ["ar_clutch"] : reel_kind === "spinning" || reel_kind === null ? ["line_roller_bearing"] : [];
  },
  clutch: ({ reel_kind, near, note }) => {
    if (has(near, "ar", "oneway")) return reel_kind === "fly" ? ["fly_oneway"] : ["ar_clutch"];
    if (reel_kind === "fly") return ["fly_oneway"];
    if (reel_kind === "spinning") return has(note, "drag", "fish") && !has(note, "slip", "backward", "backwards", "ar", "reverse", "handle") ? [] : ["ar_clutch"];
    return [];
  },
  pawl: ({ reel_kind, near }) => {
    if (has(near, "ar", "dog", "reverse", "ratchet")) return ["ar_dog"];
    if (has(near, "click", "clicker", "bait")) return reel_kind === "fly" ? ["fly_click"] : reel_kind === "spinning" ? ["spool_click"] : ["clicker"];
    if (revolving(reel_kind)) return ["lw_pawl"];
    if (reel_kind === "fly") return ["fly_click"];
    return reel_kind === "spinning" && has(near, "osc", "slider", "worm", "oscillation") ? ["osc_pawl"] : [];
  },
  click: (around) => clicking(around),
  clicker: (around) => clicking(around),
  "main bearing": ({ reel_kind, near, plural }) => {
    if (has(near, "rotor", "front", "head")) return ["pinion_bearing_front"];
    return plural && reel_kind === "spinning" ? ["main_bearing_handle", "main_bearing_plate"] : ["main_bearing_handle"];
  },
  sideplate: ({ reel_kind, near }) =>
    reel_kind === "spinning" ? ["side_cover"] : revolving(reel_kind) ? [has(near, "left", "palm", "lh") ? "side_plate_l" : "side_plate_r"] : [],
  "handle bearing": ({ near }) => (has(near, "knob", "grip") ? ["knob_bearing"] : []),
  "drag seal": ({ reel_kind }) =>
    reel_kind === "spinning" ? ["drag_knob_seal"] : reel_kind === "conventional" ? ["drag_drum_seal"] : reel_kind === "fly" ? ["fly_hub_seal"] : [],
  "spool bearing": ({ reel_kind }) =>
    reel_kind === "spinning" ? ["spool_support_brg"] : revolving(reel_kind) ? ["spool_bearings_pair"] : reel_kind === "fly" ? ["fly_spool_bearing"] : [],
  lever: ({ reel_kind, near }) =>
    reel_kind === "spinning" ? (has(near, "ar", "reverse") ? ["ar_selector"] : []) : reel_kind === "conventional" ? ["drag_lever"] : reel_kind === "baitcaster" ? ["freespool_lever"] : [],
  gear: ({ plural, near }) => (has(near, "set") || plural ? ["main_gear", "pinion_gear"] : []),
  worm: ({ reel_kind }) => (reel_kind === "spinning" ? ["osc_worm"] : revolving(reel_kind) ? ["lw_worm"] : []),
  spool: ({ reel_kind }) => (reel_kind === "spinning" ? ["spool"] : revolving(reel_kind) ? ["rs_spool"] : reel_kind === "fly" ? ["fly_spool"] : []),
  frame: ({ reel_kind }) => (reel_kind === "fly" ? ["fly_frame"] : revolving(reel_kind) ? ["frame"] : []),
  "click spring": ({ reel_kind }) =>
    reel_kind === "spinning" ? ["spool_click_spring"] : reel_kind === "fly" ? ["fly_click_spring"] : revolving(reel_kind) ? ["clicker_spring"] : [],
  "drag knob": ({ reel_kind }) => (reel_kind === "fly" ? ["fly_drag_knob"] : reel_kind === "spinning" || reel_kind === null ? ["drag_knob"] : []),
  cork: ({ reel_kind }) => (reel_kind === "fly" ? ["fly_drag_disc"] : []),
  "oneway clutch": ({ reel_kind }) => [reel_kind === "fly" ? "fly_oneway" : "ar_clutch"],
  "oneway bearing": ({ reel_kind }) => [reel_kind === "fly" ? "fly_oneway" : "ar_clutch"],
  oneway: ({ reel_kind }) => [reel_kind === "fly" ? "fly_oneway" : "ar_clutch"],
  drag: () => ["drag_washer_friction"],
  "drag washer": ({ reel_kind }) => [reel_kind === "fly" ? "fly_drag_disc" : "drag_washer_friction"],
  "drag disc": ({ reel_kind }) => [reel_kind === "fly" ? "fly_drag_disc" : "drag_washer_friction"],
  ar: ({ reel_kind }) => (reel_kind === "fly" ? ["fly_oneway"] : ["ar_clutch"]),
  lineroller: () => ["line_roller"],
  sleeve: ({ near, note }) => (has(near, "pinion", "star", "drag", "gear") ? [] : has(note, "ar", "oneway", "clutch") ? ["ar_sleeve"] : []),
  check: ({ reel_kind }) => (reel_kind === "fly" ? ["fly_click"] : []),
};

function clicking({ reel_kind }: Around): string[] {
  return reel_kind === "spinning" ? ["spool_click"] : reel_kind === "fly" ? ["fly_click"] : revolving(reel_kind) ? ["clicker"] : [];
}

export const isAmbiguous = (phrase: string): boolean => Object.hasOwn(READ, phrase);

export function readAmbiguous(phrase: string, around: Around): string[] | null {
  return Object.hasOwn(READ, phrase) ? READ[phrase]?.(around) ?? null : null;
}
