import { familyOf, kindsOf } from "./lexicon.ts";
import type { Mark } from "./marks.ts";
import { lastWord, word } from "./part-names.ts";
import { qualified } from "./referring.ts";
import type { Token } from "./tokens.ts";
import type { Action, ReelKind } from "../vocabulary-tables.ts";

/** Words of one part's place and the position they make likely; `*` stands for none of them. */
type Likely = readonly (readonly [words: string, position: string])[];
type Heads = Readonly<Record<string, Likely>>;

/** What a bare word of a part stands for most often, by what is named near it (common practice, no source). It is asked, never taken. */
const SPINNING: Heads = {
  bearing: [["knob", "knob_bearing"], ["roller", "line_roller_bearing"], ["osc oscillation worm", "osc_bearing"]],
  screw: [["handle", "handle_screw"], ["lineroller roller", "line_roller_screw"], ["bail holder", "bail_screw"], ["lock", "rotor_nut_lock"], ["slider oscillation", "osc_screw"],
    ["cover body", "side_cover_screws"]],
  spring: [["dog", "ar_dog_spring"], ["clutch ar oneway roller", "ar_springs"], ["knob", "drag_knob_spring"], ["bail", "bail_spring"]],
  bush: [["lineroller roller", "line_roller_bush"], ["bail arm", "bail_pivot_bush"], ["knob", "knob_bush"], ["pinion", "pinion_bush"], ["worm oscillation osc", "osc_bearing"],
    ["handle main maingear drive", "main_bearing_bush"], ["spool", "spool_support"]],
  shim: [["lay", "spool_shim"], ["maingear mesh main handle", "main_gear_shim"]], washer: [["ear eared keyed", "drag_washer_keyed"], ["lineroller roller", "line_roller_washer"]],
  clip: [["line", "line_clip"], ["drag keyed felt", "drag_clip"]], arm: [["handle", "handle_arm"], ["bail", "bail_arm"]], lip: [["spool", "spool_lip"]],
  guide: [["bail", "bail_spring_guide"]], pawl: [["oscillation osc worm slider", "osc_pawl"]], knob: [["drag", "drag_knob"]], gear: [["oscillation osc slider", "osc_gear"]],
};
const REVOLVING: Heads = {
  bearing: [["knob", "knob_bearing"], ["palm left", "spool_bearing_left"], ["right", "spool_bearing_right"], ["spool", "spool_bearings_pair"], ["worm levelwind", "lw_bush"],
    ["thrust", "thrust_brg"], ["drive gear sleeve", "main_bearing_handle"]],
  screw: [["handle", "handle_screw"], ["clamp", "rod_clamp"], ["plate side frame bridge ring", "frame_screws"]],
  spring: [["dog", "ar_dog_spring"], ["click clicker", "clicker_spring"], ["kick", "clutch_kick"], ["yoke clutch", "clutch_springs"]],
  bush: [["worm levelwind", "lw_bush"], ["pinion", "pinion_bush"], ["knob", "knob_bush"], ["handle main maingear drive", "main_bearing_bush"]],
  shim: [["cast tension copper", "cast_control_shim"], ["maingear mesh", "main_gear_shim"]],
  washer: [["ear eared keyed steel", "drag_washer_keyed"], ["cup dished cupped belleville", "belleville"]],
  plate: [["palm left", "side_plate_l"], ["drag drum lever", "drag_plate"]], metal: [["*", "drag_washer_keyed"]],
  cam: [["lever preset drag", "drag_lever"], ["*", "clutch_cam"]], arm: [["handle", "handle_arm"]],
};
const FLY: Heads = {
  bearing: [["hub spool spindle", "fly_spool_bearing"]], screw: [["foot", "fly_foot_screws"], ["handle", "fly_handle"]], spring: [["drag disc", "fly_drag_spring"], ["click pawl", "fly_click_spring"]],
  rim: [["*", "fly_spool"]], edge: [["*", "fly_spool"]], knob: [["drag", "fly_drag_knob"]],
};
const HEADS: Readonly<Record<ReelKind, Heads>> = { spinning: SPINNING, conventional: REVOLVING, baitcaster: REVOLVING, fly: FLY, other: {} };
/** Small parts of which a reel has many: their place must stand close by. */
const STRICT: ReadonlySet<string> = new Set(["bearing", "bush", "spring", "screw", "shim", "washer"]);
/** How far a word stands from the one whose place it tells. */
const CLOSE = 7;

const isOf = (position: string, kind: ReelKind | null) => kind === null || (kindsOf.get(position)?.includes(kind) ?? false);

/** Words within a few of a mark in the same sentence, its own among them. */
function close(found: readonly Token[], { from, to }: Mark): ReadonlySet<string> {
  const out = new Set<string>();
  for (let at = from; at > from - CLOSE && at >= 0 && found[at]?.kind !== "stop"; at--) out.add(word(found[at]));
  for (let at = from; at < to + CLOSE && at < found.length && found[at]?.kind !== "stop"; at++) out.add(word(found[at]));
  return out;
}

function likely(found: readonly Token[], mark: Mark, kind: ReelKind, note: ReadonlySet<string>): string | null {
  const head = lastWord(mark.phrase), rules = HEADS[kind][head === "oring" || head === "gasket" ? "seal" : head] ?? [], near = close(found, mark);
  const known = rules.filter(([, position]) => isOf(position, kind));
  const by = (words: ReadonlySet<string>) => known.find(([wanted]) => wanted.split(" ").some((one) => words.has(one)))?.[1];
  return by(near) ?? (STRICT.has(head) ? null : by(note) ?? known.find(([wanted]) => wanted.startsWith("*"))?.[1]) ?? null;
}

/** Parts called by a word that names no place, with the place they most likely have: to be asked about. `in_list`: a list of parts, in which a bare word counts for stock. */
export function withLikely(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null, in_list: boolean): Mark[] {
  const note = new Set(found.map(word));
  return all.map((mark) => {
    const open = mark.kind === "part" && mark.positions.length === 0 && !mark.own && !(qualified(found, mark) && word(found[mark.from - 1]).length > 2) && (!in_list || mark.phrase.includes(" "));
    const place = open && kind !== null ? likely(found, mark, kind, note) : null;
    return place === null ? mark : { ...mark, positions: [place], family: familyOf.get(place) ?? null, guessed: true };
  });
}

/** Whether it is worth asking what was done to a part of which only the likeliest place is known: of bearings and screws too much is said to ask about all of it. */
export function isWorthAsking({ phrase }: Mark, action: Action | null): boolean {
  const head = lastWord(phrase);
  if (head === "bearing") return action === "replaced" || action === "wanted";
  return action !== null && !(head === "screw" && (action === "lubricated" || action === "left"));
}
