import type { Shape } from "./part-shapes.ts";

/** Parts on one axis, outermost first: the order in which they come off. */
export interface Axis {
  readonly title: string;
  readonly parts: readonly (readonly [position: string, shape: Shape])[];
}

const HANDLE: Axis["parts"] = [
  ["knob_cap", "screw"], ["handle_knob", "grip"], ["knob_bearing", "bearing"], ["knob_bush", "bush"], ["handle_nut_lock", "cap"],
  ["handle_screw", "screw"], ["handle_arm", "crank"], ["handle_joint", "joint"], ["handle_seal", "seal"], ["handle_cap", "cap"],
];
const CLUTCH: Axis["parts"] = [
  ["ar_cover", "cap"], ["ar_clutch", "one-way clutch"], ["ar_rollers", "rollers"], ["ar_springs", "small spring"], ["ar_sleeve", "sleeve"],
  ["ar_selector", "lever"], ["ar_dog", "pawl"], ["ar_dog_spring", "leg spring"], ["ar_ratchet", "ratchet"],
];
const GEARS: Axis["parts"] = [
  ["main_bearing_handle", "bearing"], ["main_bearing_bush", "bush"], ["main_gear_shim", "washer"], ["main_gear", "gear"], ["main_bearing_plate", "bearing"],
];

const SPINNING: readonly Axis[] = [
  { title: "Spool and drag", parts: [
    ["drag_knob", "knob"], ["drag_knob_spring", "small spring"], ["drag_knob_seal", "seal"], ["drag_clip", "clip"], ["drag_washer_keyed", "eared"],
    ["drag_washer_friction", "soft washer"], ["spool_lip", "washer"], ["spool", "spool"], ["line_clip", "pawl"], ["spool_click", "pawl"],
    ["spool_click_spring", "leg spring"], ["drag_under_washer", "soft washer"], ["spool_support_brg", "bearing"], ["spool_support", "sleeve"],
    ["spool_shim", "washer"], ["rear_drag_set", "soft washer"],
  ] },
  { title: "Line roller", parts: [
    ["line_roller_screw", "screw"], ["line_roller_washer", "washer"], ["line_roller_seal", "seal"], ["line_roller", "roller"],
    ["line_roller_bearing", "bearing"], ["line_roller_bush", "bush"],
  ] },
  { title: "Rotor and bail", parts: [
    ["bail_wire", "bail"], ["bail_screw", "screw"], ["bail_pivot_bush", "bush"], ["bail_arm", "lever"], ["bail_holder", "lever"], ["bail_spring", "leg spring"],
    ["bail_spring_guide", "rail"], ["bail_trip", "pawl"], ["bail_trip_ramp", "weight"], ["rotor_nut_lock", "washer"], ["rotor_nut", "nut"], ["rotor", "rotor"],
    ["rotor_balance", "weight"], ["rotor_brake_ring", "seal"],
  ] },
  { title: "One-way clutch", parts: CLUTCH },
  { title: "Pinion and shaft", parts: [
    ["pinion_retainer", "clip"], ["pinion_bearing_front", "bearing"], ["pinion_shim", "washer"], ["pinion_gear", "pinion"], ["pinion_bush", "bush"],
    ["pinion_bearing_rear", "bearing"], ["main_shaft_seal", "seal"], ["main_shaft", "shaft"],
  ] },
  { title: "Handle", parts: HANDLE },
  { title: "Drive gear", parts: GEARS },
  { title: "Oscillation", parts: [
    ["osc_screw", "screw"], ["osc_slider", "slider"], ["osc_pawl", "pawl"], ["osc_worm", "worm"], ["osc_bearing", "bearing"], ["osc_rail", "rail"], ["osc_gear", "small gear"],
  ] },
  { title: "Body", parts: [
    ["rear_guard", "guard"], ["side_cover_screws", "screw"], ["side_cover", "cover"], ["body_seal", "long seal"], ["port_seal", "plug"], ["body", "body"],
    ["body_foot", "foot"], ["el_motor", "motor"], ["el_seal", "seal"],
  ] },
];

const FREE_SPOOL: Axis = { title: "Free-spool clutch", parts: [
  ["freespool_lever", "lever"], ["clutch_kick", "pawl"], ["clutch_cam", "ratchet"], ["clutch_yoke", "eared"], ["clutch_springs", "spring"],
] };
const LEVEL_WIND: Axis = { title: "Level wind", parts: [
  ["lw_pawl_cap", "cap"], ["lw_pawl", "pawl"], ["lw_line_guide", "guide"], ["lw_guard", "sleeve"], ["lw_worm", "worm"], ["lw_bush", "bush"], ["lw_idler", "small gear"],
] };
const PLATES: Axis = { title: "Frame and plates", parts: [
  ["frame_screws", "screw"], ["side_plate_r", "plate"], ["plate_seal", "seal"], ["bridge", "plate"], ["plate_ring", "washer"], ["frame", "frame"],
  ["side_plate_l", "plate"], ["port_seal", "plug"], ["rod_clamp", "guard"], ["body_foot", "foot"], ["el_display", "board"], ["el_motor", "motor"], ["el_seal", "seal"],
] };
const SPOOL: Axis = { title: "Spool and brakes", parts: [
  ["cast_control_cap", "knob"], ["cast_control_spring", "small spring"], ["cast_control_seal", "seal"], ["cast_control_shim", "washer"],
  ["spool_bearing_left", "bearing"], ["spool_bearings_pair", "bearing"], ["brake_dial", "knob"], ["brake_magnets", "blocks"], ["brake_drum", "sleeve"],
  ["brake_blocks", "blocks"], ["rs_spool", "spool"], ["spool_pin", "rail"], ["spool_bearing_right", "bearing"], ["clicker", "pawl"], ["clicker_spring", "leg spring"],
] };
const REVOLVING: readonly Axis[] = [
  { title: "Handle", parts: HANDLE },
  { title: "Drag and drive gear", parts: [
    ["star", "ratchet"], ["star_click", "small spring"], ["star_spacer", "bush"], ["drag_lever", "lever"], ["preset_knob", "knob"], ["belleville", "spring washer"],
    ["drag_drum_seal", "seal"], ["drag_plate", "plate"], ["thrust_brg", "bearing"], ["drag_washer_keyed", "eared"], ["drag_washer_friction", "soft washer"],
    ...GEARS, ["gear_shaft", "shaft"], ["low_gear", "small gear"],
  ] },
  { title: "One-way clutch", parts: CLUTCH },
  { title: "Pinion", parts: [["pinion_retainer", "clip"], ["pinion_bearing_rear", "bearing"], ["pinion_bush", "bush"], ["pinion_gear", "pinion"]] },
  FREE_SPOOL, SPOOL, LEVEL_WIND, PLATES,
];
const FLY: readonly Axis[] = [
  { title: "Spool", parts: [
    ["fly_latch", "cap"], ["fly_handle", "grip"], ["fly_counterweight", "weight"], ["fly_spool", "spool"], ["fly_spool_bearing", "bearing"], ["fly_spindle", "shaft"],
  ] },
  { title: "Drag", parts: [
    ["fly_hub_seal", "seal"], ["fly_oneway", "one-way clutch"], ["fly_drag_disc", "soft washer"], ["fly_drag_spring", "spring washer"],
    ["fly_knob_seal", "seal"], ["fly_drag_knob", "knob"],
  ] },
  { title: "Click and frame", parts: [
    ["fly_click", "pawl"], ["fly_click_spring", "leg spring"], ["fly_frame", "frame"], ["fly_foot_screws", "screw"], ["body_foot", "foot"],
  ] },
];

/** Where each part stands in the exploded view of its kind of reel, drawn for this app; a kind that is not here has no view. */
export const REEL_LAYOUTS: Readonly<Record<string, readonly Axis[]>> = {
  spinning: SPINNING, conventional: REVOLVING, baitcaster: REVOLVING, fly: FLY,
};
