import { listed } from "./listed.ts";

/** Further names of the parts of reels whose spool turns, and of electric ones, gone through position by position (common practice, no source). */
export const REVOLVING_NAMES: readonly (readonly [position: string, names: readonly string[]])[] = [
  ["gear_shaft", listed(`drive spindle; crank spindle; handle stud; gear spindle; handle post; drive stud; main stud; handle shaft sleeve; gear
    axle; drive post`)],
  ["low_gear", listed(`low range gear; two speed gear; 2 speed gear; two speed shifter; gear selector; shifter pin; speed shifter; gear change
    button; gear change; gear change pin; speed selector; low speed; shift knob; shift spring; two speed pin; 2 speed pin; two speed mechanism;
    push shaft; low gear set`)],
  ["lw_worm", listed(`level winder shaft; levelwind screw; levelwind cross gear; worm bar; worm rod; level winder worm; lw screw; lw worm shaft;
    line guide shaft; levelwinder worm; cross screw; double screw`)],
  ["lw_pawl", listed(`follower; levelwind follower; guide pin; level winder pawl; pawl pin; lw pin; line guide follower; lw follower; carriage
    pawl; pawl in guide; levelwind dog`)],
  ["lw_pawl_cap", listed(`pawl retainer; pawl retaining nut; pawl keeper; pawl end cap; line guide cap; line guide nut; pawl cap screw; cap over
    pawl; levelwind cap; levelwind nut; carriage cap; carriage nut`)],
  ["lw_idler", listed(`levelwind wheel; levelwind plastic gear; lw cog; small plastic gear; worm drive gear; drive cog levelwind; worm wheel;
    little cog; small cog; levelwind transfer gear; lw plastic gear; idle cog`)],
  ["lw_guard", listed(`worm housing; worm shaft cover; worm shaft guard; levelwind shield; guide rod levelwind; levelwind rod; levelwind guide
    bar; stabiliser bar; stabilizer bar; levelwind cage; lw cover; worm sleeve; worm shaft tube; line guide bar`)],
  ["lw_line_guide", listed(`level winder; levelwinder; line eye; guide ring levelwind; line guide ring; guide carriage; line guide ceramic;
    levelwind eye; levelwind insert; line guide head; levelwind head; traveller`)],
  ["lw_bush", listed(`worm end bush; worm shaft end bush; levelwind shaft bearing; lw bearing; worm shaft bushing; lw shaft bush; worm end
    bearing; worm support bush; bush for worm; bush on worm`)],
  ["rs_spool", listed(`main spool; spool and shaft; spool flange; mag spool; braid spool; spool rim; flange of spool`)],
  ["spool_bearing_left", listed(`spool bearing lh; palm spool bearing; lh spool bearing; left plate spool bearing; left sideplate spool bearing;
    tail plate spool bearing; tailplate bearing; brake side spool bearing; spool bearing brake side; spool bearing off side; lsp bearing; left
    side plate bearing; opposite side spool bearing; spool bearing non handle side`)],
  ["spool_bearing_right", listed(`right side spool bearing; spool bearing rh; rh spool bearing; gear side spool bearing; spool bearing gear side;
    cast cap bearing; bearing in cast cap; bearing in cast control; cast control side bearing; cap bearing; spool cap bearing; rsp bearing;
    headplate bearing; bearing under cast cap; tension side bearing`)],
  ["spool_bearings_pair", listed(`spool shaft bearing; bearing on spool; spool brg set; spool bearing set; pair spool bearing; spool ball bearing;
    bearing either end of spool; bearing each end of spool; bearing for spool; cast bearing`)],
  ["spool_pin", listed(`spool drive cross pin; pin through spool; pin through spool shaft; drive pin; spool lock pin; spool shaft drive pin; dowel
    pin`)],
  ["cast_control_cap", listed(`cast brake cap; cc cap; cc knob; casting control; casting knob; spool end cap; spool cap; cast tension knob; spool
    tensioner; spool tension dial; mech brake; mechanical brake; tension control; friction cap; spool free play cap; side cap; bearing cap;
    casting brake knob; spool tension`)],
  ["cast_control_seal", listed(`cc seal; cast knob oring; cast cap gasket; oring in cast cap; oring on cast cap; spool cap oring; oring under cast
    cap; cast knob seal; cast control gasket; spool tension oring`)],
  ["cast_control_shim", listed(`cc shim; cc washer; cc spacer; cast cap shim; shim in cast cap; spool end shim; spool brake shim; friction disc
    cast; cast cap spacer; cast cap disc; brass washer; brass disc; tension disc; brake disc; cast cap washer; cap shim; spool end float shim;
    spool tension shim; spool tension washer; carbon shim; fibre disc; bronze disc; bronze washer; cast control plate; end float shim; spool end
    disc; tension plate`)],
  ["cast_control_spring", listed(`cc spring; cc click; cc clicker; cast cap clicker; cast cap click; cast cap click spring; cap clicker; tension
    knob click; cast knob click; cast control detent; cast knob spring; tension knob detent`)],
  ["brake_blocks", listed(`brake weight block; cast brake block; brake slider; brake bush; brake blocks set; brake sleeve; brake shoe set; fibre
    block; centrifugal shoe; cent block; centri block; centrifugal slider; brake piece; centrifugals; brake fibre; centrifugal brake pad;
    centrifugal pad`)],
  ["brake_drum", listed(`brake cup; brake surface; centrifugal drum; centrifugal ring; brake sleeve ring; drum for brake; brake ring race; braking
    ring`)],
  ["brake_magnets", listed(`magnetic brake plate; magnetic brake unit; magnet brake unit; mag unit; magnet set; magnet ring; mag ring; magnet
    disc; brake mag plate; mag system; magnet carrier; magnetic plate; mag brake magnet`)],
  ["brake_dial", listed(`brake dial click; mag dial knob; external brake dial; brake adjuster knob; brake control; brake control knob; mag knob;
    mag adjuster; magnet knob; brake adjust dial; magnetic dial; cast dial; brake selector; side dial`)],
  ["clutch_yoke", listed(`clutch lift; pinion lifter; pinion fork; yoke plate; shifting fork; engaging yoke; clutch jack; lift yoke; gear yoke;
    clutch shifter; yoke assy`)],
  ["clutch_springs", listed(`yoke spring set; clutch lift spring; jack spring set; clutch coil spring; yoke coil spring; spring for yoke; spring
    on yoke`)],
  ["clutch_cam", listed(`cam ring; clutch ring; clutch slide plate; cam slider; clutch cam ring; eccentric ring; eccentric plate; lift cam; jack
    plate; clutch ramp; cam plate clutch; clutch slide; clutch bar plate`)],
  ["clutch_kick", listed(`kick pawl; kick dog; kick lever assy; clutch trip; clutch trip lever; kickout lever; kick out lever; clutch pawl; clutch
    engaging lever; clutch return pawl; kicker; kick plate lever; clutch kick pawl; re engage lever; engage lever; clutch claw`)],
  ["freespool_lever", listed(`thumb clutch; thumb bar lever; freespool clutch lever; throw arm; throwout lever; clutch thumb bar; bar clutch;
    spool release lever; clutch release lever; clutch release; clutch pedal; thumb clutch bar; gear lever; clutch thumb button; freespool switch;
    spool release button; casting lever; cast lever; thumb press`)],
  ["star", listed(`drag star knob; star knob; star handle; star nut; star drag knob; star drag lever; drag star wheel; star adjuster`)],
  ["star_click", listed(`star wheel click; star click plate; star wheel spring; star drag click pin; star detent; drag star detent; star click
    plunger; star pin; star ratchet spring; star click disc`)],
  ["star_spacer", listed(`star sleeve; star wheel spacer; handle spacer; handle sleeve; spacer under star; drag sleeve; drag spacer sleeve; spacer
    behind star; star bush; handle bush spacer; handle collar; star collar; spacer tube; drag star spacer`)],
  ["belleville", listed(`bellville washer; belleville set; drag spring washer; drag tension washer; dished spring washer; cupped washer; star
    spring washer; drag spring; curved washer; tension spring washer; spring disc washer; coned spring washer; star drag spring; disc spring set;
    bellevilles set; belville set; bevel washer; wave washer; wavy washer; crinkle washer; cup spring`)],
  ["drag_lever", listed(`lever quadrant; quadrant; lever arm; drag cam lever; strike lever; lever drag arm; lever cam ramp; drag control lever;
    lev cam; drag ramp; cam ramp; lever detent; lever quadrant screw; lever screw; drag quadrant; strike button; lever stop`)],
  ["preset_knob", listed(`preset adjuster knob; drag preset knob; pre set knob; drag preset dial; preset wheel; lever preset; presetter; preset
    control`)],
  ["drag_plate", listed(`drag disc; drag disk; carbon plate; lever drag washer; lever drag rotor; drag pressure disc; pressure disc; drag carbon
    plate; lever drag carbon; drag backing plate; drag rotor plate; big carbon; drag drive plate; drive plate; drag friction plate`)],
  ["drag_drum_seal", listed(`drag seal; drag plate seal; drag chamber seal; drag housing gasket; seal on drag cover; drag cover ring; drum cover
    seal; drag case seal; drag can seal; drag hub seal; seal of drag drum; drag drum oring; drum gasket; drag drum gasket`)],
  ["thrust_brg", listed(`thrust needle bearing; lever drag thrust; drag thrust bearing; thrust bearing set; thrust pair; thrust needle race; axial
    bearing; needle thrust washer; drag thrust; thrust ball bearing; thrust needle`)],
  ["clicker", listed(`clicker mechanism; clicker mech; click pawl; click tongue; alarm pawl; alarm clicker; bait click; line out clicker; strike
    alarm; clicker gear; clicker wheel; click gear; bait ratchet; clicker lever; ratchet pawl; ratchet tongue; click ratchet; run alarm`)],
  ["clicker_spring", listed(`clicker horseshoe spring; click pawl spring; click tongue spring; clicker wire spring; clicker clip; alarm pawl
    spring; bait click spring; clicker hairpin; hairpin spring; ratchet spring; u spring; clicker ring spring; click leaf spring`)],
  ["handle_nut_lock", listed(`nut retaining plate; handle nut screw; nut cover plate; handle retaining plate; handle keeper; nut keeper plate;
    crank nut cover; handle keeper plate; nut retaining screw; nut locking screw; crank nut plate; handle nut tab; handle locking plate; handle
    lock tab`)],
  ["frame", listed(`main frame; cage frame; reel frame; frame plate; frame side; frame ring; spacer bar; frame pin; frame rail; frame bar post;
    frame spacer bar; cage post`)],
  ["side_plate_r", listed(`right hand sideplate; rh plate; gear plate side; handle side plate; head cap; headplate; rh sideplate; handle side
    cover plate; gear side plate; right side cover; right hand plate; crank side plate; crank side cover; drive side plate; right side plate; gear
    box side; gear cover; rhs plate; gear housing`)],
  ["side_plate_l", listed(`left hand sideplate; lh plate; lh sideplate; left side cover; left hand plate; palm side plate cover; tailplate; non
    handle sideplate; off side plate; brake side cover; brake plate; brake cover; palming cover; non handle side plate; left side plate; quick
    release plate; plate lock; sideplate latch; side plate latch; sideplate lever; palm sideplate`)],
  ["plate_ring", listed(`outer ring; plate trim ring; rim ring; side plate trim; bezel; plate bezel; trim; chrome trim; side plate bezel;
    sideplate trim; outside ring`)],
  ["bridge", listed(`bridge screw plate; stud bridge; main bridge; gear bridge plate; drive plate bridge; stud plate; set plate assy; post plate;
    gear stud plate`)],
  ["frame_screws", listed(`frame post screw; side screw; sideplate fixing screw; cage bolt; post screw; pillar screw; cross bar screw; crossbar
    screw; knurled screw; sideplate lock screw; frame bar screw; head screw; side plate thumbscrew; thumbscrew; handle side screw; plate bolt;
    quick take down screw; takedown screw; take down screw; screws of frame; screw in frame; coin screw; sideplate knob; captive screw; ring bolt;
    body screw; side cover screw; cover screw`)],
  ["plate_seal", listed(`sideplate ring seal; side plate rubber; cover seal ring; palm plate seal; palm plate oring; left plate seal; right plate
    seal; left plate oring; right plate oring; frame seal; frame gasket; seal between plate and frame; frame oring; tail plate seal; side cover
    seal; side cover oring`)],
  ["rod_clamp", listed(`rod clamp stud; clamp stud; rod clamp bar; seat clamp; reel clamp; reel seat clamp; harness ring; harness ear; lug screw;
    clamp bar; clamp plate; rod bracket; clamp wing nut; rod clamp set; clamp kit; lug nut; clamp post`)],
  ["el_motor", listed(`power motor; motor unit; motor assy; motor drive; motor brush; motor gear; electric drive; motor shaft; winding motor;
    motor pinion`)],
  ["el_seal", listed(`power terminal; power cable; power cord; power cord socket; power contact; plug pin; plug contact; battery plug; cable
    gland; cord socket; terminal; terminals; power lead; socket pin; battery contact; cable connector; lead socket; connector; plug seal; battery
    terminal; charge port; power inlet; socket cap; power pin`)],
  ["el_display", listed(`lcd; lcd screen; display board; main board; circuit board; control unit; counter display; line counter display; counter
    screen; display screen; display window; depth counter; digital display; circuit; pcb; control panel; key pad; keypad; counter unit; line
    counter unit; display glass; counter window; push button board; button panel`)],
];
