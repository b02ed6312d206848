import { listed } from "./listed.ts";

/** Names by which customers, old hands and other trades call the parts of a reel (common practice, no source). */
export const OTHER_NAMES: readonly (readonly [position: string, names: readonly string[]])[] = [
  ["drag_knob", listed(`drag adjuster; drag tension knob; drag adjustment knob; top drag knob`)],
  ["spool_lip", listed(`rim of spool; spool rim edge`)],
  ["line_clip", listed(`spool line clip`)],
  ["spool_click", listed(`drag alarm; drag sound clicker; spool click pawl`)],
  ["drag_clip", listed(`drag retaining clip; drag wire clip; drag circlip; drag retaining ring; retaining ring in spool; drag stack clip`)],
  ["drag_washer_friction", listed(`drag felt washer; drag carbon washer; carbon drag disc; friction disc; star drag washer; soft disc; drag friction
    washer`)],
  ["bail_holder", listed(`wire holder; bail wire holder; non roller side arm; far side bail arm; opposite bail arm; off side bail arm; non roller
    arm; opposite side arm`)],
  ["bail_arm", listed(`line roller arm; arm lever`)],
  ["bail_trip", listed(`bail kicker; tripping lever; trip mech; trip mechanism; bail kick lever; trip arm; bail trip arm`)],
  ["bail_spring", listed(`bail return spring; bail tension spring; bail closing spring; bail coil spring`)],
  ["bail_screw", listed(`bail arm pivot screw; bail wire screw; bail wire fixing screw; bail arm bolt; bail arm fixing screw`)],
  ["bail_trip_ramp", listed(`bail kick ramp; trip plate; bail trip plate; trip block; kick ramp`)],
  ["rotor_brake_ring", listed(`brake ring; bail brake; rotor brake band; friction ring`)],
  ["line_roller_bearing", listed(`line roller ball bearing; lineroller ball bearing`)],
  ["line_roller_screw", listed(`line roller pin; lineroller pin; roller pin`)],
  ["line_roller_washer", listed(`roller spacer; line roller shim; line roller spacer; roller shim; lineroller shim`)],
  ["line_roller_seal", listed(`line roller cap; roller cap; lineroller cap`)],
  ["rotor_nut", listed(`rotor retaining nut; nut on rotor; rotor holding nut; rotor lock nut`)],
  ["rotor_nut_lock", listed(`rotor nut retainer; rotor nut keeper; rotor nut clip; rotor nut locking plate; rotor nut tab`)],
  ["pinion_gear", listed(`pinion shaft`)],
  ["pinion_bearing_front", listed(`bearing behind rotor; bearing under rotor; rotor side pinion bearing; big pinion bearing`)],
  ["pinion_bearing_rear", listed(`bearing at back of pinion; pinion tail bearing; tail pinion bearing; back pinion bearing; pinion end bearing;
    small pinion bearing`)],
  ["ar_clutch", listed(`needle clutch; ar needle bearing; ar unit; oneway unit; clutch unit; sprag clutch; ar clutch unit`)],
  ["ar_sleeve", listed(`inner sleeve; ar inner ring; clutch inner race; ar inner race; ar tube; oneway inner ring; clutch inner ring; inner tube;
    inner ring of clutch; inner ring`)],
  ["ar_springs", listed(`leaf spring in clutch; clutch leaf spring; ar leaf spring; roller spring`)],
  ["ar_ratchet", listed(`ar ratchet wheel; ratchet wheel; ar ratchet gear; ratchet disc`)],
  ["ar_selector", listed(`ar selector lever; reverse selector; ar lever; reverse lever; ar button; ar sw lever; switch lever; selector cam; switch
    cam`)],
  ["main_gear", listed(`face gear; crown gear; bull gear; master gear; high speed gear; high gear`)],
  ["main_bearing_plate", listed(`plate side bearing; non handle side bearing; plate side main bearing; bearing off side; off side drive bearing`)],
  ["osc_gear", listed(`step gear; crosswind gear; osc idler gear`)],
  ["osc_worm", listed(`crosswind shaft; traverse worm; traverse shaft; osc shaft`)],
  ["osc_pawl", listed(`worm pawl; traverse pawl; crosswind pawl; slider block pawl`)],
  ["osc_screw", listed(`slider retaining screw; shaft screw; crosshead screw; slider fixing screw; slider holding screw; mainshaft screw; slider
    block screw`)],
  ["osc_slider", listed(`traverse block; slider carriage; oscillation carriage; osc carriage`)],
  ["osc_rail", listed(`slide rod; oscillation guide; osc guide; slider guide; osc guide rail; slider rod; slider guide rod; oscillation guide rod;
    slider pin`)],
  ["handle_arm", listed(`winding handle; winding arm; crank handle`)],
  ["handle_knob", listed(`paddle; t bar; paddle knob; knob grip; handle paddle`)],
  ["handle_screw", listed(`handle fixing screw; handle retaining screw; handle securing screw; handle retaining nut; handle fixing bolt`)],
  ["handle_joint", listed(`fold mechanism; handle hinge pin; fold down joint; folding mechanism; handle fold joint; folding pin; handle knuckle;
    handle folding pin; fold button`)],
  ["handle_cap", listed(`handle screw cap; handle screw cover; screw in cap; off side cap; blanking cap; handle side cap; side cap; blanking plug;
    off handle cap; handle dust cap; drive shaft cap; handle hole cap`)],
  ["side_cover", listed(`gear box lid; crankcase cover; gearbox side cover; body side cover`)],
  ["knob_bush", listed("handle knob bush; handle knob bushing; handle grip bush")],
  ["spool_support", listed("spool support bush; spool support collar; spool support bushing; spool collar")],
  ["body_seal", listed(`gearbox cover gasket; gearbox cover seal; seal round body; lid seal; lid gasket; case seal; case gasket; housing seal;
    housing gasket; main body seal; main body gasket; body cover seal; perimeter seal`)],
  ["side_cover_screws", listed(`casing screw; case screw; lid bolt; housing screw; side cover fixing screw; body cover screw`)],
  ["rear_guard", listed(`skid plate; rear bumper; tail guard; rear plate; rear body cover`)],
  ["port_seal", listed(`oil port cap; oil hole cap; maintenance port seal; lube port cap; oil port screw; lube port screw; lube port seal; service
    port seal; oil hole seal`)],
  ["lw_worm", listed(`levelwind worm; lw shaft; lw worm; levelwind worm shaft; worm gear shaft`)],
  ["lw_pawl_cap", listed(`pawl cap nut; levelwind pawl cap; lw pawl cap; pawl retaining cap; pawl holder; pawl screw; pawl plug; guide cap`)],
  ["lw_idler", listed(`lw gear; worm gear cog; levelwind drive gear; levelwind idler; lw idler; lw idler gear; lw drive gear; levelwind idler gear;
    lw drive cog; levelwind drive cog`)],
  ["lw_guard", listed(`levelwind tube; levelwind guard; lw tube; lw guard; worm tube; worm cover; worm shield; levelwind bar; guide bar; lw bar`)],
  ["lw_line_guide", listed(`line guide carriage; line guide eye; guide eye; line guide insert; lw carriage; line carriage; ceramic guide`)],
  ["spool_bearing_left", listed(`palm side bearing`)],
  ["spool_bearing_right", listed(`right plate spool bearing; right sideplate spool bearing; head plate spool bearing`)],
  ["low_gear", listed(`low speed gear; low gear pinion; two speed button; shift pin; shift lever; speed button; low speed pinion; gear shift button;
    shift mechanism`)],
  ["gear_shaft", listed(`handle shaft; main gear shaft; gear stud; drive gear shaft`)],
  ["belleville", listed(`conical washer; dished washer; cone washer; belville washer; dish washer; disc spring washer`)],
  ["preset_knob", listed(`drag preset; preset adjuster; preset drag knob; lever drag preset`)],
  ["drag_plate", listed(`drag disc plate; lever drag plate; drag pressure plate; main drag plate`)],
  ["thrust_brg", listed(`thrust race; thrust roller bearing; needle thrust bearing; thrust washer set`)],
  ["clicker", listed(`line out alarm; click button; click slider; clicker slider; clicker switch; ratchet clicker; bait alarm; clicker dog`)],
  ["clicker_spring", listed(`clicker u spring; clicker leaf spring; click u spring; clicker tongue spring; clicker return spring; clicker pawl
    spring; bait clicker leaf spring`)],
  ["freespool_lever", listed(`eccentric lever; throw lever; free spool bar; thumb button; release bar; spool release bar; clutch release bar; thumb
    release; freespool button; freespool bar`)],
  ["frame", listed(`crossbar; frame post; frame pillar; frame crossbar; pillar; cross member`)],
  ["frame_screws", listed(`tail plate screw; rsp screw; lsp screw; ring screw; palm plate screw; head plate screw; left plate screw; right plate
    screw; frame bolt; sideplate bolt; sideplate thumb screw; bridge plate screw`)],
  ["bridge", listed(`gear bridge; bridge casting`)],
  ["handle_nut_lock", listed(`handle nut plate; locking plate; handle nut locking plate; nut locking plate; handle nut retaining plate; handle nut
    clip`)],
  ["cast_control_cap", listed(`mechanical brake knob; cast knob; mechanical brake cap; spool tension control`)],
  ["cast_control_shim", listed(`brass shim; brake shim; tension knob shim; cast control washer; bronze shim; cast control friction disc; tension
    washer disc; cast control shim washer; tension cap shim`)],
  ["cast_control_spring", listed(`cast control clicker; cast control click; tension knob clicker; tension cap spring; cast cap spring`)],
  ["spool_pin", listed(`pin in spool shaft; spool drive pin; cross pin; spool cross pin; drive pin in spool; spool shaft cross pin`)],
  ["el_seal", listed(`socket seal; power plug seal; battery socket; battery lead socket; power lead socket; cable plug; power connector; power
    socket seal`)],
  ["brake_blocks", listed(`brake pin; centrifugal pin; brake arm; centrifugal brake shoe`)],
  ["brake_drum", listed(`brake rim; brake liner; brake track; brake race; drum liner`)],
  ["star_click", listed(`star click spring; drag star clicker; star click pin; star clicker spring; drag star click spring; star wheel clicker`)],
  ["clutch_kick", listed(`return lever; clutch return; kick arm; clutch kick lever; clutch kick spring`)],
  ["clutch_cam", listed(`cam plate; clutch cam plate; thumb bar cam`)],
  ["side_plate_l", listed(`palm cover; palm side cover; left cover; brake side plate; off side cover`)],
  ["side_plate_r", listed(`handle side cover; right cover; gear side cover; handle plate`)],
  ["fly_oneway", listed(`drag clutch; drag oneway clutch; hub oneway`)],
  ["fly_spool_bearing", listed(`spindle bearing bush`)],
  ["fly_drag_knob", listed(`rear drag knob; drag adjuster knob; drag wheel; drag adjuster wheel`)],
  ["fly_knob_seal", listed(`drag adjuster oring; drag adjuster seal; drag knob seal fly`)],
  ["fly_latch", listed(`spool catch; spool lock; spool release lever; latch lever; spool retaining latch; spool cap`)],
  ["fly_handle", listed(`handle spindle; handle post; handle rivet; spool winding handle; wood handle`)],
  ["fly_counterweight", listed(`counter balance weight; balance weight; counter weight`)],
  ["fly_spool", listed(`spare spool; fly reel spool`)],
  ["fly_spindle", listed(`spool spindle; center spindle; main spindle`)],
  ["fly_drag_spring", listed(`belleville; bellevilles; belleville washer; drag tension spring; drag spring washer; disc spring washer; drag disc
    spring`)],
  ["fly_click", listed(`click ratchet; check ratchet; click gear; check mechanism; click mechanism`)],
  ["rs_spool", listed(`alloy spool; spool assy`)],
  ["spool", listed(`alloy spool; spool assy`)],
  ["main_bearing_handle", listed(`gear shaft bearing; drive gear side bearing; handle drive bearing`)],
];
