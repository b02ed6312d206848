import { listed } from "./listed.ts";

/** Further names of the parts of spinning reels and of what all kinds of reel have, gone through position by position (common practice, no source). */
export const SPINNING_NAMES: readonly (readonly [position: string, names: readonly string[]])[] = [
  ["drag_knob", listed(`drag control knob; drag adjusting knob; drag tensioner; clutch knob; spool nut`)],
  ["drag_knob_seal", listed(`drag knob ring seal; drag nut seal; drag nut oring; spool knob oring; drag dial seal; spool cap oring; drag top seal`)],
  ["drag_knob_spring", listed(`drag knob detent; drag knob pawl; drag knob ratchet spring; drag nut spring; drag dial clicker`)],
  ["drag_washer_friction", listed(`leather drag washer; leather; ptfe washer; drag fibre; drag lining; drag packing; cork washer; drag shoe;
    friction plate; soft drag washer; fibre drag washer; carbon fibre washer; carbon fibre drag; drag carbon; drag washer stack; clutch washer;
    friction pad; star drag stack`)],
  ["drag_washer_keyed", listed(`stainless drag washer; drag metal washer; lugged washer; drag tab washer; metal drag disc; steel drag disc; drag
    steel; splined washer; keyed drag washer; stainless plate`)],
  ["drag_clip", listed(`drag spring ring; drag circlip ring; spool circlip; clip holding drag; drag stack ring; spool snap ring`)],
  ["drag_under_washer", listed(`underspool washer; underspool felt; under spool felt; washer below spool; spool base felt`)],
  ["spool", listed(`main spool; spool unit; spool rotor`)],
  ["spool_lip", listed(`lip of spool; edge of spool; spool lip ring; titanium lip; spool lip edge; spool rim lip`)],
  ["line_clip", listed(`line holder; line retainer clip; clip for line; line clip on spool; braid clip`)],
  ["spool_click", listed(`drag click pawl; spool click tongue; click pawl under spool; drag sound clip; spool ratchet pawl; drag pawl`)],
  ["spool_click_spring", listed(`click pawl spring; drag click spring; spool clicker spring; drag sound spring; click spring in spool`)],
  ["spool_support", listed(`spool sleeve; spool boss; bush for spool; spool support ring; spool base collar; spool carrier bush`)],
  ["spool_support_brg", listed(`spool support ball; bearing in spool; spool inner bearing`)],
  ["spool_shim", listed(`spool spacer; spool lay shim; shims on mainshaft; shaft shim; spool packing washer; line lay spacer; mainshaft shim`)],
  ["rear_drag_set", listed(`rear drag knob; rear drag cam; rear drag unit; bait feeder; bait feeder clutch; free spool clutch`)],
  ["rotor", listed(`rotor head; head of rotor; rotor body; rotor unit`)],
  ["rotor_nut", listed(`nut holding rotor; rotor fixing nut; rotor main nut`)],
  ["rotor_nut_lock", listed(`rotor nut locking screw; locking plate rotor; rotor nut grub screw; rotor nut washer plate; rotor nut stop`)],
  ["rotor_brake_ring", listed(`rotor drag ring; rotor brake rubber ring; rotor friction band; rotor grip ring; trip brake ring; rotor stop rubber`)],
  ["rotor_balance", listed(`rotor counterweight; rotor counter weight; counterbalance rotor; rotor counterbalance; balancer; balancing weight`)],
  ["bail_wire", listed(`bail arch; bail loop; bail bow; bail hoop; pick up wire; bail rod; wire arm`)],
  ["bail_arm", listed(`bail roller arm; arm cam lever; roller side arm; pickup arm lever; bail side arm`)],
  ["bail_holder", listed(`bail wire mount; bail side lever; bail cam side; wire side arm; off side arm; far side arm; bail mount`)],
  ["bail_spring", listed(`bail snap spring; bail arm torsion spring; bail open spring; bail flip spring; spring for bail; bail kick spring; spring
    in rotor arm; overcentre spring; bail mechanism spring`)],
  ["bail_spring_guide", listed(`bail spring rod; bail spring pin; spring guide pin; bail link rod; bail link; bail pushrod; bail spring seat; bail
    spring plunger`)],
  ["bail_trip", listed(`bail trip mechanism; bail trip mech; trip pin; bail trip pin; trip plunger; bail tripper; tripper; bail kick arm; bail
    release lever; trip leg`)],
  ["bail_trip_ramp", listed(`kicker plate; bail trip cam; trip stop; bail trip block; trip bumper; bail trip stop; kick block`)],
  ["bail_screw", listed(`bail holder bolt; arm pivot screw; bail hinge screw; bail mount screw; bail arm cap screw; bail lever screw; bail side
    screw; roller side screw; bail fixing screw`)],
  ["bail_pivot_bush", listed(`bail arm washer; bail pivot washer; bail collar; arm washer; bail arm collar; arm pivot bush; bail pivot bushing`)],
  ["line_roller", listed(`line wheel; bail line roller; pulley; line pulley; pick up roller; roller wheel; lineroller wheel; line guide on bail`)],
  ["line_roller_bearing", listed(`bearing in roller; bearing inside lineroller; bearing of lineroller; bail arm bearing; bail bearing; pickup
    bearing; roller ball bearing; lineroller bb; roller bb; roller race; arm bearing; line bearing`)],
  ["line_roller_bush", listed(`lineroller sleeve bush; roller inner bush; roller insert; lineroller insert; roller plastic bush; roller inner
    sleeve; lineroller spacer bush`)],
  ["line_roller_seal", listed(`lineroller gasket; roller gasket; lineroller cap seal; lineroller shield; roller shield; roller dust seal`)],
  ["line_roller_screw", listed(`lineroller fixing screw; lineroller retaining screw; roller axle; roller axle screw; roller spindle; lineroller
    shaft; lineroller axle; roller retaining screw; roller fixing screw; lineroller post; roller post`)],
  ["line_roller_washer", listed(`lineroller thrust washer; washer on lineroller; washer in lineroller; roller side washer`)],
  ["main_shaft", listed(`main axle; spool spindle shaft; reel shaft; centre spindle; main spindle spinning; spool post; shaft main`)],
  ["main_shaft_seal", listed(`shaft front seal; rotor seal; rotor side seal; nose seal; front oil seal; lip seal; pinion seal; front shaft seal`)],
  ["pinion_gear", listed(`pinion cog; pinion wheel; pinion tooth; little gear; drive pinion; brass pinion`)],
  ["pinion_bearing_front", listed(`bearing front of pinion; bearing on pinion; pinion main bearing; upper pinion bearing; top pinion bearing;
    front main bearing; body front bearing; rotor main bearing; bearing in nose; nose bearing; bearing at front of body; bearing under head`)],
  ["pinion_bearing_rear", listed(`lower pinion bearing; bottom pinion bearing; bearing behind pinion; inner pinion bearing; bearing rear of
    pinion; rear bearing pinion; bearing on end of pinion`)],
  ["pinion_bush", listed(`rear pinion bush; front pinion bush; pinion end bush; pinion tail bush; pinion rear bush; bush for pinion; bush on
    pinion; pinion brass bush`)],
  ["pinion_shim", listed(`shim under pinion; shim on pinion; pinion bearing shim; shim behind pinion; pinion spacer; pinion height shim; shim
    under front bearing`)],
  ["pinion_retainer", listed(`pinion plate; pinion bearing cover; pinion bearing holder; pinion housing plate; clip on pinion bearing; pinion
    circlip; pinion collar clip; bearing keeper plate`)],
  ["ar_clutch", listed(`ar mechanism; ar mech; instant ar; instant stop; anti back play clutch; roller clutch unit; oneway needle bearing; ar
    roller unit; stopper clutch; clutch pack; backstop bearing; backstop; infinite ar; iar; iar clutch; ar brg assy; roller oneway; no back
    bearing`)],
  ["ar_sleeve", listed(`ar collar; clutch collar; oneway collar; sleeve in ar; sleeve of clutch; clutch inner; ar race; clutch race; oneway race;
    clutch sleeve collar; ar bush; pinion clutch sleeve; ar drum`)],
  ["ar_springs", listed(`ar roller spring; spring of clutch; clutch tiny spring; clutch wire spring; needle clutch spring`)],
  ["ar_rollers", listed(`clutch needle; needle pin; ar needle; oneway needle; clutch needle roller; ar pin; needle in clutch`)],
  ["ar_cover", listed(`ar cap; ar clutch cap; clutch housing cover; oneway housing; clutch retainer; ar cover plate; ar retainer; clutch cage; ar
    case; ar clutch housing; ar top cover; ar cover screw`)],
  ["ar_selector", listed(`ar on off switch; on off lever; on off switch; ar toggle; ar cam lever; ar control lever; ar control; reverse cam; ar
    trigger; reverse button; ar knob lever; ar arm; ar rod; stopper cam; stopper switch; reverse knob; ar off lever; anti rev cam; antirev cam;
    antirev lever`)],
  ["ar_dog", listed(`ar stop pawl; reverse dog; reverse pawl; backstop dog; backstop pawl; stop pawl; ratchet pawl; drag dog; gear dog`)],
  ["ar_dog_spring", listed(`dog ear clip; dog clip; ar pawl spring; ratchet dog spring; dog tension spring; silent spring; dog silencer; silencer
    spring; dog wire`)],
  ["ar_ratchet", listed(`dog wheel; dog ratchet; drag ratchet; ratchet plate; stop wheel; stop gear; stopper gear; ratchet under gear; star
    ratchet; ratchet plate gear`)],
  ["main_gear", listed(`drive wheel; big drive gear; main cog; large gear; brass gear; drive cog; big cog; main wheel; high gear; first gear`)],
  ["main_bearing_handle", listed(`gearbox bearing handle side; drive gear bearing right; bearing rh side; bearing right side; main rh bearing; h
    side bearing; main bearing h side; crank side bearing; crank shaft bearing; handle end bearing; gear bearing; bearing on right side; bearing
    behind handle; bearing under handle; bearing on drive shaft; main gear shaft bearing; maingear shaft bearing`)],
  ["main_bearing_plate", listed(`bearing lh side; bearing left side; main lh bearing; o side bearing; body side main bearing; blind side bearing;
    non crank side bearing; bearing opposite handle; main bearing opposite side; opposite side bearing; drive bearing off side; main bearing far
    side; cap side bearing`)],
  ["main_bearing_bush", listed(`drive gear bushing; gear shaft bush; drive shaft bush; bush for drive gear; bush for main gear; crank bush; handle
    side bush; bush in side cover; bush in body; plate side bush; main gear bush; maingear bush; gear sleeve bush; handle shaft bush`)],
  ["main_gear_shim", listed(`handle side shim; off side shim; drive shaft shim; shim on drive gear; shim behind gear; shim behind main gear; side
    play shim; end float shim; mesh washer; main bearing shim; gearing shim; gear spacer; drive shim; handle shaft shim; crank shim; drive bearing
    shim; backlash washer; shim set main gear`)],
  ["osc_gear", listed(`oscillation cog; oscillating wheel; crosswind cog; traverse gear; cam gear; oscillation wheel; slider gear; oscillation
    drive gear; level line gear; transfer cog`)],
  ["osc_slider", listed(`oscillator; oscillation arm; oscillation plate; traverse slider; cross head block; slide block; oscillating slider; shaft
    carrier; spool carriage; slider piece; guide block; crosshead block`)],
  ["osc_worm", listed(`crosswind worm; cross gear worm; oscillation cross gear; wormshaft spinning; traverse gear shaft; worm drive`)],
  ["osc_pawl", listed(`slider pin pawl; worm follower; follower pin; cross gear pin; cross gear pawl; crosshead pawl; traverse pin; worm shaft
    pawl`)],
  ["osc_bearing", listed(`crosswind bearing; traverse bearing; oscillation worm bearing; worm end bearing; oscillation bush; cross gear bearing;
    worm bush spinning; crosswind bush`)],
  ["osc_rail", listed(`guide bar slider; slider bar; oscillation bar; oscillation rod; crosshead rail; crosshead guide; slider shaft; slide bar;
    slide guide; guide rod oscillation; traverse rail; traverse rod`)],
  ["osc_screw", listed(`slider retainer; slider retainer screw; slider plate screw; slider cap screw; shaft clamp screw; shaft fixing screw;
    oscillation plate screw; slider retainer plate; mainshaft retaining screw; mainshaft clamp; shaft lock screw; spool shaft screw; slider lock
    screw; slider clamp`)],
  ["handle_arm", listed(`reel handle; double handle; handle shank; handle bar; crank lever; handle blade; winder; winder handle; swept handle;
    handle unit; main handle`)],
  ["handle_knob", listed(`power grip; knob cork; eva knob; round knob; wind knob; handle ball; winding knob; eva grip; cork knob; t knob; ball
    knob; handle knob grip; handle egg; grip knob; winder knob; t grip; wooden knob`)],
  ["knob_bearing", listed(`knob ball bearing; bearing inside knob; handle knob ball bearing; paddle bearing; bearing of knob; knob brg set; t bar
    bearing; bearing in grip; knob race; handle grip bearing; winding knob bearing`)],
  ["knob_bush", listed(`knob bushing; knob sleeve; knob plastic bush; bush in knob; paddle bush; knob insert; knob inner sleeve; knob liner; knob
    spacer; knob collar; knob washer; knob shim; knob spindle bush`)],
  ["knob_cap", listed(`knob end plug; knob cover; knob end screw; knob retaining screw; knob cap plug; knob rivet; handle knob cap; handle knob
    screw; handle knob pin; cap on knob; knob end; grip cap; knob fixing screw; knob badge; knob post; knob spindle; knob shaft; knob axle; grip
    screw; handle knob post; handle knob spindle`)],
  ["handle_screw", listed(`handle nut screw; handle locking screw; handle end screw; handle fixing nut; handle mount screw; handle set screw;
    handle lock nut; handle main nut; crank screw; handle nut bolt; handle bolt nut; crank bolt; handle fixing; handle screw bolt; handle centre
    screw; handle center screw; handle thumb screw; handle tightening screw`)],
  ["handle_joint", listed(`handle elbow; folding elbow; handle swivel; fold pin screw; handle fold pin; folding arm joint; handle fold screw pin;
    handle fold pivot; handle joint spring; fold spring; folding handle pin; folding handle screw; quick fold; handle folding screw; handle cross
    pin; handle collapse pin; collapse joint`)],
  ["handle_seal", listed(`handle side seal; seal under handle; crank shaft seal; handle stem seal; handle port seal; handle hole seal; handle
    gasket; handle shaft gasket; handle entry seal; handle base oring; main gear seal handle side; handle side oring`)],
  ["handle_cap", listed(`handle screw plug; side cap screw; off side handle cap; handle blank cap; blind cap; non handle side cap; handle end cap;
    opposite side cap; cover cap; handle cover cap; left side cap; screw cap; body side cap; port cap; side screw cap; handle bore cap; handle
    shaft cap; cap off side; off side plug; blank cap`)],
  ["body", listed(`body half; gear case; main housing; reel body; crankcase; gear housing; body shell; body casting; main frame spinning; reel
    case; body halves`)],
  ["side_cover", listed(`side lid; gearbox side; body lid; side cover plate; gear cover; casing cover; case lid; cover plate; body plate; crank
    case cover; case cover; gear box cover; gearbox side plate; side body cover`)],
  ["rear_guard", listed(`tail cap; rear skid; back guard; tail protector; back plate; body rear cover; end guard; rear cover plate; back
    protector; tail piece; rear body guard; body protector; body end cover; tail plate spinning; rear trim`)],
  ["body_seal", listed(`side cover ring seal; cover rubber; cover seal ring; lid oring; side gasket; side seal; body rubber; gearbox oring; gear
    case seal; gear case gasket; casing seal; case oring; body seal ring; sealing ring body; side cover rubber; body joint seal; cover gasket
    seal; lid rubber; body side seal; main gasket; main oring; housing oring; gear cover seal; gear cover gasket; crankcase gasket`)],
  ["side_cover_screws", listed(`side screw; cover fixing screw; lid fixing screw; body fixing screw; casing bolt; cover bolt; body bolt; body
    cover bolt; gear case screw; case bolt; body housing screw; screws of side cover; side body screw; body side screw; s c screw; body case
    screw`)],
  ["body_foot", listed(`rod foot; foot stem; seat foot; body stem; body leg; mount foot; foot plate; foot of reel; stand; mounting foot; reel
    stem; reel leg`)],
  ["port_seal", listed(`oil port oring; grease port; grease port screw; grease plug; oil plug; lube plug; oiling port; oil cap; lube hole plug;
    service port; service port cap; maintenance port screw; maintenance port oring; oil screw; lube cap; oiling screw; oil port seal screw; port
    seal screw; inspection port; port screw; grease port cap`)],
];
