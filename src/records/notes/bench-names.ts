import { listed } from "./listed.ts";

/** Further names of parts, gone through position by position: by place, by work, by maker's manual and by slang (common practice, no source). */
export const BENCH_NAMES: readonly (readonly [position: string, names: readonly string[]])[] = [
  ["drag_knob", listed(` drag control knob; drag adjusting knob; drag tensioner; clutch knob; spool nut`)],
  ["drag_knob_seal", listed(`drag knob ring seal; drag nut seal; drag nut oring; spool knob oring; drag dial seal; spool cap oring; drag top seal`)],
  ["drag_knob_spring", listed(`drag knob detent; drag knob pawl; drag knob ratchet spring; drag nut spring; drag dial clicker`)],
  ["drag_washer_friction", listed(`drag leather; leather drag washer; leather; ptfe washer; drag fibre; drag lining; drag packing; cork washer; drag
    shoe; friction plate; soft drag washer; fibre drag washer; carbon fibre washer; carbon fibre drag; drag carbon; top drag washer; drag washer
    set; drag washer kit; drag washer stack; clutch washer; friction pad; star drag stack`)],
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
  ["rotor_nut_lock", listed(`rotor screw; rotor nut locking screw; locking plate rotor; rotor nut grub screw; rotor nut washer plate; rotor nut
    stop`)],
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
  ["bail_screw", listed(`bail holder screw; bail holder bolt; arm pivot screw; bail hinge screw; bail mount screw; bail arm cap screw; screws on
    bail; bail lever screw; bail side screw; roller side screw; bail fixing screw`)],
  ["bail_pivot_bush", listed(`bail arm washer; bail pivot washer; bail collar; arm washer; bail arm collar; arm pivot bush; bail pivot bushing`)],
  ["line_roller", listed(`line wheel; bail line roller; pulley; line pulley; pick up roller; roller wheel; lineroller wheel; line guide on bail`)],
  ["line_roller_bearing", listed(`bearing in roller; bearing inside lineroller; bearing of lineroller; bail arm bearing; bail bearing; pickup
    bearing; roller ball bearing; lineroller bb; roller bb; roller race; arm bearing; line bearing`)],
  ["line_roller_bush", listed(`lineroller sleeve bush; roller inner bush; roller insert; lineroller insert; roller plastic bush; roller inner
    sleeve; lineroller spacer bush`)],
  ["line_roller_seal", listed(`lineroller gasket; seal in lineroller; roller gasket; lineroller cap seal; lineroller shield; roller shield; roller
    dust seal`)],
  ["line_roller_screw", listed(`lineroller fixing screw; lineroller retaining screw; roller axle; roller axle screw; roller spindle; lineroller
    shaft; lineroller axle; roller retaining screw; roller fixing screw; lineroller post; roller post`)],
  ["line_roller_washer", listed(`lineroller thrust washer; washer on lineroller; washer in lineroller; roller side washer`)],
  ["main_shaft", listed(`main axle; spool spindle shaft; reel shaft; centre spindle; main spindle spinning; spool post; shaft main`)],
  ["main_shaft_seal", listed(`seal on mainshaft; shaft front seal; rotor seal; rotor side seal; nose seal; front oil seal; lip seal; pinion seal;
    front shaft seal`)],
  ["pinion_gear", listed(`pinion cog; pinion wheel; pinion tooth; little gear; drive pinion; brass pinion`)],
  ["pinion_bearing_front", listed(`bearing front of pinion; bearing on pinion; pinion main bearing; upper pinion bearing; top pinion bearing; front
    main bearing; body front bearing; rotor main bearing; bearing in nose; nose bearing; bearing at front of body; bearing under head`)],
  ["pinion_bearing_rear", listed(`lower pinion bearing; bottom pinion bearing; bearing behind pinion; inner pinion bearing; bearing rear of pinion;
    rear bearing pinion; bearing on end of pinion`)],
  ["pinion_bush", listed(`rear pinion bush; front pinion bush; pinion end bush; pinion tail bush; pinion rear bush; bush for pinion; bush on pinion;
    pinion brass bush`)],
  ["pinion_shim", listed(`shim under pinion; shim on pinion; shim under pinion bearing; pinion bearing shim; shim behind pinion; pinion spacer;
    pinion height shim; shim under front bearing`)],
  ["pinion_retainer", listed(`pinion plate; pinion bearing cover; pinion bearing holder; pinion housing plate; clip on pinion bearing; pinion
    circlip; pinion collar clip; bearing keeper plate`)],
  ["ar_clutch", listed(`ar mechanism; ar mech; instant ar; instant stop; anti back play clutch; roller clutch unit; oneway needle bearing; ar roller
    unit; stopper clutch; clutch pack; backstop bearing; backstop; infinite ar; iar; iar clutch; ar brg assy; roller oneway; no back bearing`)],
  ["ar_sleeve", listed(`ar collar; clutch collar; oneway collar; sleeve for ar; sleeve in ar; sleeve of clutch; clutch inner; ar race; clutch race;
    oneway race; clutch sleeve collar; ar bush; pinion clutch sleeve; ar drum`)],
  ["ar_springs", listed(`ar roller spring; spring of clutch; clutch tiny spring; clutch wire spring; needle clutch spring`)],
  ["ar_rollers", listed(`clutch needle; needle pin; ar needle; oneway needle; clutch needle roller; ar pin; needle in clutch`)],
  ["ar_cover", listed(`ar cap; ar clutch cap; clutch housing cover; oneway housing; clutch retainer; ar cover plate; ar retainer; clutch cage; ar
    case; cover of clutch; ar clutch housing; ar top cover; ar cover screw`)],
  ["ar_selector", listed(`ar on off lever; ar on off switch; on off lever; on off switch; ar switch lever; ar toggle; ar cam lever; ar control
    lever; ar control; reverse cam; ar trigger; reverse button; ar knob lever; ar arm; ar rod; stopper cam; stopper switch; reverse knob; ar off
    lever; anti rev cam; antirev cam; antirev lever`)],
  ["ar_dog", listed(`ar stop pawl; reverse dog; reverse pawl; backstop dog; backstop pawl; stop pawl; ratchet pawl; drag
    dog; gear dog`)],
  ["ar_dog_spring", listed(`dog ear clip; dog clip; ar pawl spring; ratchet dog spring; dog tension spring; silent spring; dog silencer; silencer
    spring; dog wire`)],
  ["ar_ratchet", listed(`dog wheel; dog ratchet; drag ratchet; ratchet plate; stop wheel; stop gear; stopper gear; ratchet under gear; star ratchet;
    ratchet plate gear`)],
  ["main_gear", listed(`drive wheel; big drive gear; main cog; main drive gear; large gear; brass gear; drive cog; big cog; main wheel; high gear;
    first gear`)],
  ["gear_shaft", listed(`drive spindle; crank spindle; handle stud; gear spindle; handle post; drive stud; main stud; handle shaft sleeve; gear
    axle; drive post`)],
  ["main_bearing_handle", listed(`gearbox bearing handle side; drive gear bearing right; bearing rh side; bearing right side; main rh bearing; h
    side bearing; main bearing h side; crank side bearing; crank shaft bearing; handle end bearing; gear bearing; bearing on right side; bearing
    behind handle; bearing under handle; bearing on gear shaft; bearing on drive shaft; main gear shaft bearing; maingear shaft bearing`)],
  ["main_bearing_plate", listed(`bearing lh side; bearing left side; main lh bearing; o side bearing; body side main bearing; cover bearing; lid
    bearing; cover side bearing; lid side bearing; bearing in side cover; bearing in lid; blind side bearing;
    non crank side bearing; bearing opposite handle; main bearing opposite side; bearing in cover; opposite side bearing; drive bearing off side;
    main bearing far side; cap side bearing`)],
  ["main_bearing_bush", listed(`drive gear bushing; gear shaft bush; drive shaft bush; bush for drive gear; bush for main gear; crank bush; handle
    side bush; bush in side cover; bush in body; plate side bush; main gear bush; maingear bush; gear sleeve bush; handle shaft bush`)],
  ["main_gear_shim", listed(`handle side shim; off side shim; drive shaft shim; shim on drive gear; shim behind gear; shim behind main gear; side
    play shim; end float shim; mesh washer; main bearing shim; gearing shim; gear spacer; drive shim; handle shaft shim; crank shim; drive bearing
    shim; backlash washer; shim set main gear`)],
  ["low_gear", listed(`low range gear; two speed gear; 2 speed gear; two speed shifter; gear selector; shifter pin; speed shifter; gear change
    button; gear change; gear change pin; speed selector; low speed; shift knob; shift spring; two speed pin; 2 speed pin; two speed mechanism; push
    shaft; low gear set`)],
  ["osc_gear", listed(`oscillation cog; oscillating wheel; crosswind cog; traverse gear; cam gear; oscillation wheel; slider gear; oscillation drive
    gear; level line gear; transfer cog`)],
  ["osc_slider", listed(`oscillator; oscillation arm; oscillation plate; traverse slider; cross head block; slide block; oscillating slider; shaft
    carrier; spool carriage; slider piece; guide block; crosshead block`)],
  ["osc_worm", listed(`crosswind worm; cross gear worm; oscillation cross gear; wormshaft spinning; traverse gear shaft; worm drive`)],
  ["osc_pawl", listed(`pawl in slider; slider pin pawl; worm follower; follower pin; cross gear pin; cross gear pawl; crosshead pawl; traverse pin;
    worm shaft pawl`)],
  ["osc_bearing", listed(`crosswind bearing; traverse bearing; oscillation worm bearing; bearing on worm; worm end bearing; oscillation bush; cross
    gear bearing; worm bush spinning; crosswind bush`)],
  ["osc_rail", listed(`guide bar slider; slider bar; oscillation bar; oscillation rod; crosshead rail; crosshead guide; slider shaft; slide bar;
    oscillation slider rail; slide guide; guide rod oscillation; traverse rail; traverse rod`)],
  ["osc_screw", listed(`slider retainer; slider retainer screw; slider plate screw; slider cap screw; shaft clamp screw; shaft fixing screw;
    oscillation plate screw; slider retainer plate; mainshaft retaining screw; mainshaft clamp; shaft lock screw; spool shaft screw; slider lock
    screw; slider clamp`)],
  ["lw_worm", listed(`level winder shaft; levelwind screw; levelwind cross gear; worm bar; worm rod; level winder worm; lw screw; lw worm shaft;
    line guide shaft; levelwinder worm; cross screw; double screw`)],
  ["lw_pawl", listed(`follower; levelwind follower; guide pin; level winder pawl; pawl pin; lw pin; line guide follower; lw follower; carriage pawl;
    pawl in guide; levelwind dog`)],
  ["lw_pawl_cap", listed(`pawl retainer; pawl retaining nut; pawl keeper; pawl end cap; line guide cap; line guide nut; pawl cap screw; cap over
    pawl; levelwind cap; levelwind nut; carriage cap; carriage nut`)],
  ["lw_idler", listed(`levelwind wheel; levelwind plastic gear; lw cog; small plastic gear; worm drive gear; drive cog levelwind; worm wheel; little
    cog; small cog; levelwind transfer gear; lw plastic gear; idle cog`)],
  ["lw_guard", listed(`worm housing; worm shaft cover; worm shaft guard; levelwind shield; guide rod levelwind; levelwind rod; levelwind guide bar;
    stabiliser bar; stabilizer bar; levelwind cage; lw cover; worm sleeve; worm shaft tube; line guide bar`)],
  ["lw_line_guide", listed(`level winder; levelwinder; line eye; guide ring levelwind; line guide ring; guide carriage; line guide ceramic;
    levelwind eye; levelwind insert; line guide head; levelwind head; traveller`)],
  ["lw_bush", listed(`worm end bush; worm shaft end bush; levelwind shaft bearing; lw bearing; worm shaft bushing; lw shaft bush; worm end bearing;
    worm support bush; bush for worm; bush on worm`)],
  ["rs_spool", listed(`main spool; spool and shaft; spool flange; mag spool; braid spool; spool rim; flange of spool`)],
  ["spool_bearing_left", listed(`left side spool bearing; spool bearing left side; spool bearing lh; palm spool bearing; palm side spool bearing;
    spool bearing palm side; lh spool bearing; left plate spool bearing; left sideplate spool bearing; tail plate spool bearing; tailplate bearing;
    brake side spool bearing; spool bearing brake side; spool bearing off side; lsp bearing; left side plate bearing; opposite side spool bearing;
    spool bearing non handle side`)],
  ["spool_bearing_right", listed(`right side spool bearing; spool bearing right side; spool bearing rh; rh spool bearing; spool bearing handle side;
    gear side spool bearing; spool bearing gear side; cast cap bearing; bearing in cast cap; bearing in cast control; cast control side bearing; cap
    bearing; spool cap bearing; rsp bearing; headplate bearing; right spool bearing; bearing under cast cap; tension side bearing`)],
  ["spool_bearings_pair", listed(`spool shaft bearing; bearing on spool; spool brg set; spool bearing set; pair spool bearing; spool ball bearing;
    bearing in spool; bearing both end of spool; bearing either end of spool; bearing each end of spool; bearing for spool; cast bearing`)],
  ["spool_pin", listed(`shaft pin; spool drive cross pin; pin through spool; pin through spool shaft; drive pin; spool lock pin; spool shaft drive
    pin; dowel pin`)],
  ["cast_control_cap", listed(`cast brake cap; cc cap; cc knob; casting control; casting knob; spool end cap; spool cap; cast tension knob; spool
    tensioner; spool tension dial; mech brake; mechanical brake; tension control; friction cap; spool free play cap; side cap; bearing cap; casting
    brake knob; spool tension`)],
  ["cast_control_seal", listed(`cc oring; cc seal; cast knob oring; cast cap gasket; oring in cast cap; oring on cast cap; spool cap oring; oring
    under cast cap; cast knob seal; cast control gasket; spool tension oring`)],
  ["cast_control_shim", listed(`cc shim; cc disc; cc washer; cc spacer; cast cap shim; shim in cast cap; spool end shim; spool brake shim; friction
    disc cast; cast cap spacer; cast cap disc; brass washer; brass disc; tension disc; brake disc; cast cap washer; cap shim; spool end float shim;
    spool tension shim; spool tension washer; carbon shim; fibre disc; bronze disc; bronze washer; cast control plate; end float shim; spool end
    disc; tension plate`)],
  ["cast_control_spring", listed(`cc spring; cc click; cc clicker; cast cap clicker; cast cap click; cast cap click spring; cap clicker; tension
    knob click; cast knob click; cast control detent; cast knob spring; tension knob detent`)],
  ["brake_blocks", listed(`brake weight block; cast brake block; brake slider; brake bush; brake blocks set; brake sleeve; brake shoe set; fibre
    block; centrifugal shoe; cent block; centri block; centrifugal slider; brake piece; centrifugals; brake fibre; centrifugal brake pad;
    centrifugal pad`)],
  ["brake_drum", listed(`brake cup; brake surface; centrifugal drum; centrifugal ring; brake sleeve ring; drum for brake; brake ring race; braking
    ring`)],
  ["brake_magnets", listed(`magnetic brake plate; magnetic brake unit; magnet brake unit; mag unit; magnet set; magnet ring; mag ring; magnet disc;
    brake mag plate; mag system; magnet carrier; magnetic plate; mag brake magnet`)],
  ["brake_dial", listed(`brake dial click; mag dial knob; external brake dial; brake adjuster knob; brake control; brake control knob; mag knob; mag
    adjuster; magnet knob; brake adjust dial; magnetic dial; cast dial; brake selector; side dial`)],
  ["clutch_yoke", listed(`clutch lift; pinion lifter; pinion fork; yoke plate; shifting fork; engaging yoke; clutch jack; lift yoke; gear yoke;
    clutch shifter; yoke assy`)],
  ["clutch_springs", listed(`yoke spring set; clutch lift spring; pinion yoke spring; spring under yoke; jack spring set; clutch coil spring; yoke
    coil spring; spring for yoke; spring on yoke`)],
  ["clutch_cam", listed(`cam ring; clutch ring; clutch slide plate; cam slider; clutch cam ring; eccentric ring; eccentric plate; lift cam; jack
    plate; clutch ramp; cam plate clutch; clutch slide; clutch bar plate`)],
  ["clutch_kick", listed(`kick pawl; kick dog; kick lever assy; clutch trip; clutch trip lever; kickout lever; kick out lever; clutch pawl; clutch
    engaging lever; clutch return pawl; kicker; kick plate lever; clutch kick pawl; re engage lever; engage lever; clutch claw`)],
  ["freespool_lever", listed(`thumb clutch; thumb bar lever; freespool clutch lever; throw arm; throwout lever; clutch thumb bar; bar clutch; spool
    release lever; clutch release lever; clutch release; clutch pedal; thumb clutch bar; gear lever; clutch thumb button; freespool switch; spool
    release button; casting lever; cast lever; thumb press`)],
  ["star", listed(`drag star knob; star knob; star handle; star nut; star drag knob; star drag lever; drag star wheel; star adjuster`)],
  ["star_click", listed(`star wheel click; star click plate; star wheel spring; star drag click pin; star detent; drag star detent; star click
    plunger; star pin; star ratchet spring; star click disc`)],
  ["star_spacer", listed(`star sleeve; star wheel spacer; handle spacer; handle sleeve; spacer under star; drag sleeve; drag spacer sleeve; spacer
    behind star; star bush; handle bush spacer; handle collar; star collar; spacer tube; drag star spacer`)],
  ["belleville", listed(`bellville; bellville washer; belleville set; drag spring washer; drag tension washer; dished spring washer; cupped washer;
    star spring washer; drag spring; curved washer; tension spring washer; spring disc washer; coned spring washer; star drag spring; disc spring
    set; bellevilles set; belville set; bevel washer; wave washer; wavy washer; crinkle washer; cup spring`)],
  ["drag_lever", listed(`drag lever cam; lever quadrant; quadrant; lever arm; drag cam lever; strike lever; lever drag arm; lever cam ramp; drag
    control lever; lev cam; drag ramp; cam ramp; lever detent; lever quadrant screw; lever screw; drag quadrant; strike button; lever stop`)],
  ["preset_knob", listed(`preset adjuster knob; drag preset knob; pre set knob; drag preset dial; preset wheel; pre set dial; lever preset;
    presetter; preset control`)],
  ["drag_plate", listed(`drag disc; drag disk; carbon plate; lever drag washer; lever drag rotor; drag pressure disc; pressure disc; drag carbon
    plate; lever drag carbon; drag backing plate; drag rotor plate; big carbon; drag drive plate; drive plate; drag friction plate`)],
  ["drag_drum_seal", listed(`drag seal; drag plate seal; drag chamber seal; drag housing gasket; seal on drag cover; drag cover ring; drum cover
    seal; drag case seal; drag can seal; drag hub seal; seal of drag drum; drag drum oring; drum gasket; drag drum gasket`)],
  ["thrust_brg", listed(`thrust needle bearing; lever drag thrust; drag thrust bearing; thrust bearing set; thrust pair; thrust needle race; axial
    bearing; needle thrust washer; drag thrust; thrust ball bearing; thrust needle`)],
  ["clicker", listed(`clicker mechanism; clicker mech; click pawl; click tongue; alarm pawl; alarm clicker; bait click; line out clicker; strike
    alarm; clicker gear; clicker wheel; click gear; bait ratchet; clicker lever; ratchet pawl; ratchet tongue; click ratchet; run alarm; clicker
    assy; ratchet for click`)],
  ["clicker_spring", listed(`clicker horseshoe spring; click pawl spring; click tongue spring; clicker wire spring; clicker clip; alarm pawl spring;
    bait click spring; clicker hairpin; hairpin spring; ratchet spring; u spring; clicker ring spring; click leaf spring`)],
  ["handle_arm", listed(`power handle; reel handle; double handle; handle shank; handle bar; crank lever; handle blade; winder; winder handle;
    handle assy; swept handle; handle unit; main handle`)],
  ["handle_knob", listed(`power grip; knob cork; eva knob; round knob; wind knob; handle ball; winding knob; eva grip; cork knob; t knob; ball knob;
    handle knob grip; handle egg; grip knob; winder knob; t grip; wooden knob`)],
  ["knob_bearing", listed(`knob ball bearing; bearing in knob; bearing inside knob; handle knob ball bearing; paddle bearing; bearing of knob; knob
    brg set; t bar bearing; bearing in grip; bearing in handle knob; knob race; handle grip bearing; winding knob bearing`)],
  ["knob_bush", listed(`knob bushing; knob sleeve; knob plastic bush; bush in knob; paddle bush; knob insert; knob inner sleeve; knob liner; knob
    spacer; knob collar; knob washer; knob shim; knob spindle bush`)],
  ["knob_cap", listed(`knob end plug; knob cover; knob end screw; knob retaining screw; knob cap plug; knob rivet; handle knob cap; handle
    knob screw; handle knob pin; cap on knob; knob end; grip cap; knob fixing screw; knob badge; knob post; knob spindle; knob shaft; knob axle;
    grip screw; handle knob post; handle knob spindle`)],
  ["handle_screw", listed(`handle nut screw; handle locking screw; handle end screw; handle fixing nut; handle mount screw; handle set screw; handle
    lock nut; handle main nut; crank screw; handle nut bolt; handle bolt nut; crank bolt; handle fixing; handle screw bolt; handle centre screw;
    handle center screw; handle thumb screw; handle tightening screw`)],
  ["handle_nut_lock", listed(`nut retaining plate; handle nut screw; nut cover plate; handle retaining plate; handle keeper; nut keeper plate; crank
    nut cover; handle keeper plate; nut retaining screw; nut locking screw; crank nut plate; handle nut tab; handle locking plate; handle lock tab`)],
  ["handle_joint", listed(`handle elbow; folding elbow; handle swivel; fold pin screw; handle fold pin; folding arm joint; handle fold screw pin;
    handle fold pivot; handle joint spring; fold spring; folding handle pin; folding handle screw; quick fold; handle folding screw; handle cross
    pin; handle collapse pin; collapse joint`)],
  ["handle_seal", listed(`seal on handle; handle side seal; seal under handle; crank shaft seal; handle stem seal; handle port seal; handle hole
    seal; handle gasket; handle shaft gasket; handle entry seal; handle base oring; main gear seal handle side; handle side oring`)],
  ["handle_cap", listed(`handle screw plug; side cap screw; off side handle cap; handle blank cap; blind cap; non handle side cap; handle end cap;
    opposite side cap; cover cap; handle cover cap; left side cap; screw cap; body side cap; port cap; side screw cap; handle bore cap; handle shaft
    cap; cap off side; off side plug; blank cap`)],
  ["body", listed(`body half; gear case; main housing; reel body; crankcase; gear housing; body shell; body casting; main frame spinning; reel case;
    body halves`)],
  ["side_cover", listed(`side lid; gearbox side; body lid; side cover plate; gear cover; casing cover; case lid; cover plate; body plate; crank case
    cover; case cover; gear box cover; gearbox side plate; side body cover`)],
  ["rear_guard", listed(`tail cap; rear skid; back guard; tail protector; back plate; body rear cover; end guard; rear cover plate; back
    protector; tail piece; rear body guard; body protector; body end cover; tail plate spinning; rear trim`)],
  ["body_seal", listed(`side cover ring seal; cover rubber; cover seal ring; lid oring; side gasket; side seal; body rubber; gearbox oring; gear
    case seal; gear case gasket; casing seal; case oring; body seal ring; sealing ring body; side cover rubber; body joint seal; cover gasket seal;
    lid rubber; body side seal; main gasket; main oring; housing oring; gear cover seal; gear cover gasket; crankcase gasket`)],
  ["side_cover_screws", listed(`side screw; cover fixing screw; lid fixing screw; body fixing screw; casing bolt; cover bolt; body bolt; body cover
    bolt; gear case screw; case bolt; body housing screw; screws of side cover; screw in side cover; screw on side cover; side body screw; body
    screw kit; body side screw; s c screw; body case screw`)],
  ["body_foot", listed(`rod foot; foot stem; seat foot; body stem; body leg; mount foot; foot plate; foot of reel; stand; mounting foot; reel stem;
    reel leg`)],
  ["port_seal", listed(`oil port oring; grease port; grease port screw; grease plug; oil plug; lube plug; oiling port; oil cap; lube hole plug;
    service port; service port cap; maintenance port screw; maintenance port oring; oil screw; lube cap; oiling screw; oil port seal screw; port
    seal screw; inspection port; port screw; grease port cap`)],
  ["frame", listed(`main frame; cage frame; reel frame; frame plate; frame side; frame ring; spacer bar; frame pin; frame rail; frame bar post; cage
    bar; frame spacer bar; cage post`)],
  ["side_plate_r", listed(`right hand sideplate; rh plate; gear plate side; handle side plate; head cap; headplate; rh sideplate; handle side cover
    plate; gear side plate; right side cover; right hand plate; crank side plate; crank side cover; drive side plate; right side plate; gear box
    side; gear cover; rhs plate; gear housing`)],
  ["side_plate_l", listed(`left hand sideplate; lh plate; lh sideplate; left side cover; left hand plate; palm side plate cover;
    tailplate; non handle sideplate; off side plate; brake side cover; brake plate; brake cover; palming cover; non handle side plate; left side
    plate; quick release plate; plate lock; sideplate latch; side plate latch; sideplate lever; palm sideplate`)],
  ["plate_ring", listed(`outer ring; plate trim ring; rim ring; side plate trim; bezel; plate bezel; trim; chrome trim; side plate bezel; sideplate
    trim; outside ring`)],
  ["bridge", listed(`bridge screw plate; stud bridge; main bridge; gear bridge plate; drive plate bridge; stud plate; set plate assy; post plate;
    gear stud plate`)],
  ["frame_screws", listed(`frame post screw; side screw; sideplate fixing screw; cage bolt; post screw; pillar screw; cross bar screw; crossbar
    screw; knurled screw; sideplate lock screw; frame bar screw; head screw; side plate thumbscrew; thumbscrew; handle side screw; plate bolt; quick
    take down screw; takedown screw; take down screw; screws of frame; screw in frame; coin screw; sideplate knob; captive screw; ring bolt; body
    screw; side cover screw; cover screw`)],
  ["plate_seal", listed(`sideplate ring seal; side plate rubber; cover seal ring; palm plate seal; palm plate oring; left plate seal; right plate
    seal; left plate oring; right plate oring; frame seal; frame gasket; seal between plate and frame; frame oring; tail plate seal; side cover
    seal; side cover oring`)],
  ["rod_clamp", listed(`rod clamp stud; clamp stud; rod clamp bar; seat clamp; reel clamp; reel seat clamp; harness ring; harness ear; lug screw;
    clamp bar; clamp plate; rod bracket; clamp wing nut; rod clamp set; clamp kit; lug nut; clamp post`)],
  ["fly_frame", listed(`frame pillar; frame ring; cage; reel cage; frame foot plate; full frame; half frame; frame rim; pillar; frame; body; frame
    bar`)],
  ["fly_spool", listed(`spool rim; spool arbor; spool face; spool plate; main spool; cassette; spool cassette; cassette spool; spool frame; spool
    flange; line spool; spool`)],
  ["fly_spindle", listed(`hub spindle; main axle; center axle; spool axle; spindle pin; spindle post; center pin; spool post; axle; shaft; main
    shaft; mainshaft; spool shaft; axle pin; hub shaft; hub axle`)],
  ["fly_drag_disc", listed(`drag pad; brake disc; drag washer; drag plate; drag surface; carbon disc; carbon drag; drag disc stack; friction disc;
    brake pad; brake; brake washer; drag stack; ptfe disc; leather disc; drag cone; conical drag; drag pack; drag cartridge; cartridge; cork drag
    disc; drag ring; disc pad; drag lining; drag unit`)],
  ["fly_drag_spring", listed(`drag spring; brake spring; drag coil spring; pressure spring; drag pressure spring; spring behind drag disc; disc drag
    spring; drag coil; cork spring; spring stack; coil spring; drag wave washer`)],
  ["fly_hub_seal", listed(`hub gasket; drag seal; drag oring; main seal; seal on hub; seal in hub; drag housing seal; drag case seal; cartridge
    gasket; hub lip seal; sealed hub oring; drag chamber seal; hub ring; shaft seal; cartridge seal ring`)],
  ["fly_oneway", listed(`roller clutch; oneway bearing; needle clutch; hub bearing clutch; oneway roller; clutch bearing; ar clutch; ar bearing;
    sprag; roller bearing clutch; oneway needle; clutch; direction clutch; hub roller clutch; drag oneway; clutch roller bearing`)],
  ["fly_spool_bearing", listed(` spool ball bearing; spindle ball bearing; spool bush; spool bushing; hub bush; spool
    hub bush; spindle bushing; axle bearing; axle bush; center bearing; spool spindle bearing; spool spindle bush; bearing in spool;
    bearing on spindle; spool sleeve; bush in spool`)],
  ["fly_click", listed(`click wheel; pawl; pawls; ratchet pawl; click dog; click tongue; checks; check wheel; check gear; clicker pawl; click tooth;
    check tooth; clicker; sound pawl; incoming click; retrieve click; ratchet gear; click claw; check dog; click plate; click and pawls; drag pawl;
    clicker gear; noise pawl`)],
  ["fly_click_spring", listed(`pawl spring; clicker spring; ratchet spring; check pawl spring; click leaf; click leaf spring; pawl leaf spring;
    click pawl spring; check leaf spring; tongue spring; spring for click; spring for pawl; sound spring`)],
  ["fly_drag_knob", listed(`drag control; drag control knob; drag dial; rear knob; drag knob; adjuster knob; adjuster; drag tension knob; brake
    knob; brake adjuster; regulator; regulator screw; drag regulator; drag nut; tension knob; drag lever; drag adjuster nut; drag adjusting knob`)],
  ["fly_knob_seal", listed(`knob seal; knob gasket; drag knob gasket; adjuster seal; adjuster oring; rear knob seal; rear knob oring; dial seal;
    drag dial seal; drag control seal; knob ring seal; drag knob ring`)],
  ["fly_latch", listed(`spool catch lever; latch screw; cap screw; spool screw; spool nut; spool knob; spool
    release cap; quick release cap; release catch; spool clip; spool retainer; release latch; locking lever; spool locking lever; spool lock lever;
    center cap; spool center cap; spool retaining screw; catch; release lever; spool catch; button catch; spool button; lock lever; retaining cap`)],
  ["fly_handle", listed(`handle knob; knob; grip; winding knob; handle grip; spool knob handle; reel handle; handle peg; handle pin; handle shaft;
    handle sleeve; spool handle knob; winding grip; handle nut; knob screw; handle axle`)],
  ["fly_counterweight", listed(`counter balance screw; counterbalance screw; counterbalance weight; counterweight screw; balancing weight; balance
    plug; balancer; spool weight; spool counterweight; balance screw; rim weight; counter weight screw`)],
  ["fly_foot_screws", listed(`foot bolt; foot fixing screw; foot rivet; foot plate screw; seat foot screw; screws in foot; screw on foot; screw of
    foot; reel foot bolt; foot holding screw; frame foot screw; reel seat screw`)],
  ["el_motor", listed(`power motor; motor unit; motor assy; motor drive; motor brush; motor gear; electric drive; motor shaft; winding motor; motor
    pinion`)],
  ["el_seal", listed(`power terminal; power cable; power cord; power cord socket; power contact; plug pin; plug contact; battery plug; cable gland;
    cord socket; terminal; terminals; power lead; socket pin; battery contact; cable connector; lead socket; connector; plug seal; battery terminal;
    charge port; power inlet; socket cap; power pin`)],
  ["el_display", listed(`lcd; lcd screen; display board; main board; circuit board; control unit; counter display; line counter display; counter
    screen; display screen; display window; depth counter; digital display; circuit; pcb; control panel; key pad; keypad; counter unit; line counter
    unit; display glass; counter window; push button board; button panel`)],
];
