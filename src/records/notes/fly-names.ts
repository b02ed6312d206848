import { listed } from "./listed.ts";

/** Further names of the parts of fly reels, gone through position by position (common practice, no source). */
export const FLY_NAMES: readonly (readonly [position: string, names: readonly string[]])[] = [
  ["fly_frame", listed(`frame ring; cage; reel cage; frame foot plate; full frame; half frame; frame rim; pillar; frame; body; frame bar`)],
  ["fly_spool", listed(`spool rim; spool arbor; spool face; spool plate; main spool; cassette; spool cassette; cassette spool; spool frame; spool
    flange; line spool; spool`)],
  ["fly_spindle", listed(`hub spindle; main axle; center axle; spool axle; spindle pin; spindle post; center pin; spool post; axle; shaft; main
    shaft; mainshaft; spool shaft; axle pin; hub shaft; hub axle`)],
  ["fly_drag_disc", listed(`drag pad; brake disc; drag washer; drag plate; drag surface; carbon disc; carbon drag; drag disc stack; friction disc;
    brake pad; brake; brake washer; drag stack; ptfe disc; leather disc; drag cone; conical drag; drag pack; drag cartridge; cork drag disc; drag
    ring; disc pad; drag lining; drag unit`)],
  ["fly_drag_spring", listed(`drag spring; brake spring; drag coil spring; pressure spring; drag pressure spring; spring behind drag disc; disc
    drag spring; drag coil; cork spring; spring stack; coil spring; drag wave washer`)],
  ["fly_hub_seal", listed(`hub gasket; drag seal; drag oring; main seal; seal on hub; seal in hub; drag housing seal; drag case seal; cartridge
    gasket; hub lip seal; sealed hub oring; drag chamber seal; hub ring; shaft seal; cartridge seal ring`)],
  ["fly_oneway", listed(`oneway bearing; needle clutch; hub bearing clutch; oneway roller; clutch bearing; ar clutch; ar bearing; sprag; roller
    bearing clutch; oneway needle; clutch; direction clutch; hub roller clutch; drag oneway; clutch roller bearing`)],
  ["fly_spool_bearing", listed(`spool ball bearing; spindle ball bearing; spool bush; spool bushing; hub bush; spool hub bush; spindle bushing;
    axle bearing; axle bush; center bearing; spool spindle bearing; spool spindle bush; bearing in spool; bearing on spindle; spool sleeve; bush
    in spool`)],
  ["fly_click", listed(`pawl; pawls; ratchet pawl; click dog; click tongue; checks; check wheel; check gear; clicker pawl; click tooth; check
    tooth; clicker; sound pawl; incoming click; retrieve click; ratchet gear; click claw; check dog; click plate; click and pawls; drag pawl;
    clicker gear; noise pawl`)],
  ["fly_click_spring", listed(`pawl spring; clicker spring; ratchet spring; click leaf; click leaf spring; pawl leaf spring; click pawl spring;
    check leaf spring; tongue spring; spring for click; spring for pawl; sound spring`)],
  ["fly_drag_knob", listed(`drag control; drag control knob; drag dial; rear knob; drag knob; adjuster knob; adjuster; drag tension knob; brake
    knob; brake adjuster; regulator; regulator screw; drag regulator; drag nut; tension knob; drag lever; drag adjuster nut; drag adjusting knob`)],
  ["fly_knob_seal", listed(`knob seal; knob gasket; drag knob gasket; adjuster seal; adjuster oring; rear knob seal; rear knob oring; dial seal;
    drag dial seal; drag control seal; knob ring seal; drag knob ring`)],
  ["fly_latch", listed(`spool catch lever; latch screw; cap screw; spool screw; spool nut; spool knob; spool release cap; quick release cap;
    release catch; spool clip; spool retainer; release latch; locking lever; spool locking lever; spool lock lever; center cap; spool center cap;
    spool retaining screw; catch; release lever; spool catch; button catch; spool button; lock lever; retaining cap`)],
  ["fly_handle", listed(`handle knob; knob; grip; winding knob; handle grip; spool knob handle; reel handle; handle peg; handle pin; handle shaft;
    handle sleeve; spool handle knob; winding grip; handle nut; knob screw; handle axle`)],
  ["fly_counterweight", listed(`counter balance screw; counterbalance weight; counterweight screw; balancing weight; balance plug; balancer; spool
    weight; spool counterweight; balance screw; rim weight; counter weight screw`)],
  ["fly_foot_screws", listed(`foot bolt; foot fixing screw; foot rivet; foot plate screw; seat foot screw; screws in foot; screw on foot; screw of
    foot; reel foot bolt; foot holding screw; frame foot screw; reel seat screw`)],
];
