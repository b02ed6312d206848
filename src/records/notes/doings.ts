import { listed } from "./listed.ts";

/** What was done, in more ways than the list of actions has. Codes are those of the actions (common practice, no source). */
export const DONE: readonly (readonly [code: string, phrases: readonly string[]])[] = [
  ["REPL", listed(`replace; replaced; fitted; fit; renew; replacing; put in new; swap; swapped; change; changed; changing; new one in; new one; new
    ones; new set; new pair; supplied and fitted; fitting new; new fitted; put new; put a new one in; fitted a new one; fitted new one; made one;
    made new; made up new; cut one; fitted set; fitted from stock; replaced with new; swapped out; changed out; swapped for; installed; added new;
    renewed; new item; substituted; subbed; exchanged; put on new; put new on; new in; put new in; fitted another; replaced like for like;
    replacement fitted; new part fitted; part used; part fitted; part replaced; part supplied; supplied; new one fitted; put in a new; popped in;
    slotted in; gave it a new; got a new; used new; used a new; new unit; fresh one; fresh set; fresh pair; fresh ones; replacement in; now has new;
    has new; one in; whole lot done; from stock; from drawer; from the drawer; remade; re made; made another; made an; one made; one made from; fabricated; knocked up; knocked up a new; turned up; turned a new;
    turned one up; machined a new; machined new; printed a new; printed one; sourced; sourced a; sourced new; found one; got one; dug one out; put one on; new one
    on; new ones on; new ones fitted; put fresh; put right with new; from shelf; from the shelf; from spares; from the spares; from box;
    from the box; from the bits box; fitted one; fitted another one; put one in; swopped; swop; turned up new; made from; made a new one; cut new;
    new one made; fitted replacement; put another in; new ones in; fitted brand new; changed for new; brand new; done as routine; done as a
    precaution`)],
  ["CLEAN", listed(`clean; cleaned; cleaned up; cleaned out; cleaned off; flushed; flushed out; flushed through; degrease; degreased; washed; washed
    out; washed off; washed through; de oiled; de greased; blown out; blown through; oiled out; rinsed out; rinsed off; dried; dried out; dried off;
    scrubbed; ultrasonic; ultrasonic cleaned; decontaminated; descaled; wiped; wiped down; wiped off; wiped clean; dewatered; oven dried; hosed out;
    brushed; wire brushed; boiled out; boiled; scraped; scraped clean; blasted; bead blasted; unclogged; unblocked; cleared; cleared out; picked
    out; de rusted; derusted; degunked; de gunked; sonic bath; sonicated; soaked and cleaned; de salted; desalted; purged; jetted; airlined;
    solvent; solvent wash; solvent bath; solvent clean; swept clean; swept; flush; rinse; flush and oil; ultrasound; air blown; blew out; dug out;
    decrudded; degunged; flushed clear; cleaned through; rinsed; soaked; washed and dried`)],
  ["CLR", listed(`clean and grease; clean and oil; clean and lube; clean grease; clean oil; freed; freed off; freed up; unstuck; recovered; brought
    back; saved; cleaned and lubed; cleaned and greased; cleaned and oiled; worked free; soaked free; got going; got it going; got moving; got it
    moving; got it turning; released; flushed and oiled; rescued; revived; unseized; un seized; loosened off and oiled; worked loose and oiled;
    cleaned and regreased; cleaned and relubed; washed and oiled; washed and greased; came back to life`)],
  ["LUBE", listed(`squirt; a squirt; gave it a squirt; squirt of oil; squirt of grease; one drop each; a drop each; drop each; drop in; a lick of grease; lick of
    grease; spray of oil; shot of oil; shot of grease; smeared; soaped; silicone grease; silicone oil; grease; greased; regreased; re greased; oil; oiled; re oiled; drop oil; one drop oil; one drop of oil; two drop of oil; 2 drop of
    oil; lube; lubed; relubed; lub; lubricated; lubed up; drop of oil; repacked; with oil; light oil; light grease; light smear; fresh oil; oiled
    lightly; waxed; packed; greased up; re coated; recoated; with grease; fresh grease; bit of oil; touch of oil; touch of grease; dab of grease;
    dab of oil; smear of grease; little oil; spot of oil; spot of grease; treated; oiled up; re packed; grease applied; a touch of grease; a touch
    of oil; a bit of oil; a bit of grease; a little oil; a little grease; oil applied; soaked in oil; soaked in grease; dressed with oil; dressed
    with neatsfoot; neatsfoot oil; neatsfoot; new grease; new oil; re grease; re oil; re lube; reoiled; coated; oil added; grease added; dosed; tiny
    drop of oil; drip of oil; bead of grease`)],
  ["ADJ", listed(`adjust; adjusted; reset; re set; aligned; realigned; corrected; put right; restacked; re stacked; re tensioned; tensioned;
    retensioned; readjusted; turned around; swapped side for side; swapped sides; flipped over; swapped round; set right; wound back; wound in;
    wound out; tweaked; rehooked; hooked on; turned round; reversed; flipped; sorted; sorted out; put right again; backed off half; trimmed;
    loosened; slackened; slackened off; eased off; centred; centered; repositioned; rotated; inverted; turned end for end; turned over; swapped
    ends; timed; retimed; set up; set straight; moved back; backed off and set; backed off; pushed back in; pushed back on; pushed back; changed to left; changed to right; swapped to left; swapped to right;
    changed over to left; changed over to right; turned to left; turned to right; put back in
    place; popped back in; popped back on; set correctly; recentred; modified slightly; shortened; lengthened`)],
  ["SHIM", listed(`shim added; shimmed; re shimmed; added shim; removed shim; took one out; took one away; one taken out; taken up with; meshed;
    added; shimmed up; packed out; shimmed out; re meshed; remeshed; reshimmed`)],
  ["STRAIGHT", listed(`made straight; made it straight; put straight; straighten; straightened; bent straight; bent back; bent back to shape; reformed; reshaped; trued; trued up; re shaped; bent
    to suit; bent it to suit; bent it back; bent it straight; bent true; pulled straight; rolled straight; rolled it straight; unbent; re bent;
    rebent; levelled; flattened it; flattened back; flattened out; pressed flat; pressed straight; pulled true; squeezed straight; knocked straight;
    hammered flat; hammered straight; eased straight; tapped out; pushed out; bent out; knocked flat; tapped flat; tapped back; tapped round; tapped
    straight`)],
  ["REPAIR", listed(`fixed; fixed up; fixed it; patched up; touched in; polish; patch; glue; glued in; glued back; glued on; glued back on; repaired; glued; soldered; welded; repair; rebuilt; filed; filed smooth; eased; chased; fettled; dressed; polished; polished
    out; polished up; deburred; re riveted; riveted; deglazed; stretched; machined; lapped; honed; stoned; sanded; sanded smooth; scuffed; peened;
    peened over; rubbed down; re bushed; superglued; wired up; bushed; patched; epoxied; sleeved; plugged; pressed back; pressed in; taped; taped
    up; bonded; brazed; pinned; re pinned; ground; ground down; linished; buffed; buffed up; skimmed; faced; turned down; bored; reamed; re
    profiled; squeezed; crimped; secured; mended; re glued; stuck back; stuck back on; re bonded; cut back; cut down; drilled and epoxied; re
    tipped; re tapered; flattened off; smoothed; smoothed off; burnished; stoned out; surfaced; surfaced flat; resurfaced; ran in; run in with
    compound; smoothed out; filed back; filed down; blended; made good; built up; superglue; refurbed; refurbished; tied; wired; wired on; re wired;
    roughed; roughened; roughed up; scoured; rubbed back; recut; re cut; bodged; bent and filed`)],
  ["TIGHT", listed(`tighten; tightened; re tightened; retightened; nip up; nipped up; threadlocked; locked it; tightened up; done up; did up; re
    torqued; torqued; snugged; re secured; locked with; screwed down; locked; locked in place; snugged up; pinched up; secured with threadlock;
    threadlock; thread lock; with threadlock; thread locked; re locked; relocked`)],
  ["EXTRACT", listed(`cut out; drilled; drilled out; drill out; extracted; helicoiled; helicoil fitted; heli coiled; thread insert; thread insert
    fitted; thread insert put in; insert fitted; re tapped; retapped; tapped; screw extractor; heat and penetrating oil; ground out; cut off; heated
    out; got out; got it out; out with heat; came out with heat; came out ok`)],
  ["RESEAL", listed("resealed; reseated; re seated; refitted seal; re bedded")],
  ["REFIT", listed(`refitted; refit; put back; refitted old; dry fitted; fitted dry; reinstalled; re installed; reinstated; re fitted; put back on;
    back in place; reattached; re attached; reconnected; re hooked; reseat; back in order; put back in order; relocated; clipped back; clipped back
    on; hooked back on`)],
  ["MODIFY", listed("upgraded; upgrade; modded; converted; modified; uprated")],
  ["DONOR", listed(`2nd hand; sourced 2nd hand; sourced second hand; one off donor; off old reel; off an old reel; off my parts; from a scrapper; off a scrapper; donor; salvaged; from donor; second hand part; used part; from parts reel; off parts reel; off scrap reel; off a scrap reel; off
    a donor; off donor; ex scrap; off a dead reel; off a parts reel; off another reel fitted; robbed from; pinched off donor; from scrap reel;
    second hand`)],
  ["ORDER", listed(`none in; left in stock; na from; not stocked; nothing in stock; zero stock; zero in stock; must be ordered; has to be ordered; will be ordered; to get; on the
    order; on the list; on order list; to be bought; back ordered; on back order; back order; on order; ordered; need to order; to order; not in stock; out of stock; none in stock; no stock; no
    spare; no spare to be had; awaiting; awaiting part; awaiting parts; waiting for; waiting on; wait for; wait on; on the way; on its way; waiting
    part; to come; coming from; due in; not available; unavailable; need one; need a new one; available; none left; cant get; cannot get; cant find;
    unobtainable; none about; none to be had; sourcing; special order; nos; needed; wanted; no part for; parts not available; part not available;
    part unavailable; no longer supplied; nla; needs replacing; needs changing; needs renewing; needs swapping; need replacing; needs replacement;
    needs to be replaced; need changing; none spare; no spare part; couldnt get one; couldnt get a new one; couldnt source; waiting for customer ok
    on; waiting for ok on; awaiting ok on; awaiting go ahead on; waiting on go ahead for; awaiting go ahead for; cant be had; not to be had; not
    available any more; out of production; none anywhere; none available; chasing; being ordered; no longer available; backordered; to follow; will
    ring when in; none on shelf; not on shelf; coming; expected; order placed; part ordered; waiting delivery; eta; to be ordered; needs ordering;
    supplier out; sold out; have to order; must order; on backorder; trying to source; looking for one; cant source`)],
];

/** Words said of any part at fault without saying what is wrong, and the grade they prove. */
export const FAULTY: readonly (readonly [grade: 3 | null, words: readonly string[]])[] = [
  [3, listed(`cactus; rooted; munted; clapped out; clapped; flogged; flogged out; hammered; done in; on its knees; gone to pieces; finito; caput;
    goosed; worn beyond use; gone; shot; knackered; dead; buggered; kaput; had it; finished; useless; wrecked; ruined; toast; done for; stuffed; failed; totalled;
    written off; completely gone; past saving; beyond saving; had its day; a goner; destroyed; fubar; trashed; cooked; no good; no use`)],
  [null, listed(`bad; faulty; us; duff; rubbish; rough; noisy; poor; weak; dirty; filthy; leaking; weeping; on its way out; on its last leg; last
    leg; past its best; not good; chipped; fogged; rattles; not turning; stuck; grinding; not working; iffy; dodgy; naff; crap; manky; minging;
    horrible; nasty; graunchy; rumbly; lumpy; draggy; clunky; catchy; sluggish; stiffish; tight in places; marked; dinged; dented; burred; holed;
    misshapen; out of shape; damaged; floppy; flops; not great; not happy; suspect noise; feels rough; sounds rough; grindy; grumbling; loud; wont
    adjust; groaning; clogged; blocked; squealing; squeaking; squeaky; clicking; ticking; knocking; chattering; vibrates; vibrating; rusted up;
    furred up; not returning; squealed; squeals; squeaked; squeaks; rattled; grinds; knocks; knocked; ticks; ticked; chatters; groans; groaned;
    vibrated; wobbled; whining; whines; whined; growls; growling; screeching; screaming; howling; hissing; buzzing; humming; clunks; clunking;
    binds; jams; jammed; jamming; catches; catching; dragging; rubs; rubbing; scrapes; scraping; worse; perforated; bulged; bulging; shrunk; curled;
    flared; mushroomed; mashed; scabby; furry; powdery; seizing; dusty; muddy; gooey; gluey; parched; whiny; wonky; gouged; failing; fried; blued;
    coarse; ridge; flat spot; flat spotted; burr; not spinning; not clicking; not sounding; not ticking; creaks; creaking; judders; juddering;
    jerky; snatchy; surging; pulsing; not smooth; uneven; off center; sagging; sagged; droops; droopy; leak; leaks; weeps; sweating; bleeding;
    oozing; choked; fouled; tangled; lost temper; lost tension; lost its spring; lost spring; no tension; no spring left; no bite; no life;
    lifeless; marginal; not right; doubtful; ropey; ropy; spent; crumbly; fell to bits; soup; sludge; sludgy; treacle; tarry; gunge; gungy; gummy;
    set solid; not springing back; not dropping; not engaging; not holding; not sealing; not locking in; worn looking; looking tired; unserviceable;
    defective; disintegrating; popped out; jumped out; jumped off; popped off; slipped off; slipped out; fell off; dislodged; came off; fell out;
    came out; off its peg; off its pin; off its post; off its guide; off the post; sprung out; sprung off; sprung open; off the peg; off the guide;
    wouldnt hold; wouldnt stay; wont stay; damp; wet; wouldnt turn; wont turn; wont seat; out of its seat; out of place; off its seat; come adrift;
    adrift; unglued; frayed; scruffy`)],
];

/** More ways to say what is wrong; the families for which a reading holds (none: all). */
export const WRONG: readonly (readonly [mode: string, phrases: readonly string[], families: readonly string[]])[] = [
  ["galled", listed("chewed up; picking up; binding marks; scuffed up"), []],
  ["play", listed(`worn oval; oval; ovalled; sloppy; worn sloppy; out of round; egged; rattly; slack; loose on its shaft; excess play; too much
    play; wobbly`), []],
  ["slipping", listed(`intermittent; wont grip; slip; slipped; wont hold; not gripping; not holding; fails to lock; doesnt lock; doesnt hold; not
    biting`),
    ["one-way clutch"]],
  ["pinched", listed("nipped; trapped; nicked; cut; caught; squeezed out"), ["seal"]],
  ["over-greased", listed(`full of old grease; packed with old grease; contaminated with grease; contaminated with oil; full of dried grease; full of hard grease;
    clogged with old grease; full of grease; thick grease; packed with grease; grease on; clogged with grease; flooded with oil; full of oil`),
    ["one-way clutch", "ball bearing"]],
  ["contaminated", listed("contaminated with grease; contaminated with oil; soaked with oil; covered in oil; oil on; oily; greasy; grease on; full of oil; oil soaked; wet; swollen; covered in grease; greased by mistake"), ["drag washer"]],
  ["glazed", listed("burnt; shiny; polished smooth; glazed over"), ["drag washer"]],
  ["salt deposit", listed("full of salt; salt packed; salted; salt in; solid with salt; salt everywhere; caked in salt"), []],
  ["sand", listed("full of dirt; full of grit; full of mud; sand in; sand under; grit in"), []],
  ["seized", listed(`rusted in; stuck fast; seized up; seized solid; solid; stuck with salt; rusted up solid; wont budge; wont move; locked up;
    jammed solid; frozen solid; welded on; seized on; seized in; seized to`), []],
  ["pitted", listed(`corroded in; corroded through; corroding; rusted through; rotten; rotted; eaten away; corroded away; badly corroded; badly
    rusted; heavily corroded; rusted away; rusted out; heavily pitted; light pitting`), []],
  ["surface rust", listed("gone rusty; rust spots; going rusty; light corrosion; spots of rust; rust starting; slightly rusty; stained; tarnished"), []],
  ["worn", listed(`worn thin; wore; well worn; badly worn; worn to a point; worn away; worn flat; score; scoring; worn down; worn smooth; worn
    round; worn through; worn to nothing; wore out; heavily worn; worn badly; wearing; wear marks; worn out; thinned`), []],
  ["grooved", listed("cut through; groove starting; cut by line; line groove; grooves in; deep groove; grooving"), ["line roller", "structure"]],
  ["broken", listed(`snapped off; snapped clean off; broken off; sheared off; fell apart; in half; in two; in pieces; disintegrated; collapsed; came
    apart; broken up; broken through; snapped in two; mangled; crushed; let go`), []],
  ["chipped tooth", listed(`stripped 2 tooth; stripped 3 tooth; stripped two tooth; tooth stripped; stripped tooth; missing 2 tooth; missing two
    tooth; missing 3 tooth; missing three tooth; tooth missing; tooth jammed; tooth gone; tooth broken; chipped; stripped; stripped gear; missing a
    tooth; tooth chipped; tooth off; lost a tooth; tooth snapped; minus a tooth`), ["gear"]],
  ["bent", listed(`kinked; kink; crooked; bowed; wonky; buckled; out of line; tweaked over; bent over; out of shape; skewed; not straight; slightly
    bent`),
    ["shaft", "structure", "lever or pawl", "knob", "washer or shim"]],
  ["stripped", listed(`thread gone; stripped; thread stripped; stripped thread in; rounded off; head rounded; rounded out; head stripped; head
    chewed; thread damaged; pulled thread; thread pulled`), ["screw", "structure", "knob"]],
  ["loose", listed(`backed off on its own; backs off; backing off; backing out; backs out; backed out; turn loose; undone; came undone; working loose; worked loose; came adrift; not tight; had come loose; shaken loose;
    coming loose; come loose; vibrated loose; unscrewed itself; loose on`), []],
  ["wrong part", listed(`upside down; wrong way round; fitted wrong; wrong way; in wrong; wrong order; order wrong; out of order; in backwards; on
    backwards; fitted backwards; wrong size; assembled wrong; too long; too short; in the wrong place; incorrectly fitted`), []],
  ["missing", listed(`left out by; gone missing; not fitted by; lost by customer; lost; went missing; not present; wasnt there; fell out and lost;
    gone walkabout`), []],
  ["flattened", listed("flat; squashed; gone flat; no squeeze left; compressed"), ["seal"]],
  ["compressed", listed("flat; squashed; thin; gone thin; crushed"), ["drag washer"]],
  ["glazed sleeve", listed("flat; glazed; shiny"), ["line roller", "bushing"]],
  ["fatigue break", listed("broken; snapped; broke; bust; let go; gone in two; cracked; sheared; busted"), ["spring"]],
  ["perished", listed("cracked; split; hard; gone hard; brittle; crumbling"), ["seal"]],
  ["abraded seal", listed("worn; lip worn"), ["seal"]],
  ["corroded contact", listed("green; gone green; corroded"), ["electrical", "seal"]],
  ["water inside", listed("water in the; water inside it; waterlogged; full of water; full of sea water; full of salt water; full of seawater"), []],
  ["brittle plastic", listed("gone sticky; sticky to touch; tacky; gone tacky"), ["knob"]],
  ["end of life", listed("tired; past it; worn out completely; very old"), []],
  ["not written", listed("torn; ripped"), ["seal"]],
  ["broken", listed("cage broken; cage gone; cage broke; cage broken up; cage failed"), ["ball bearing"]],
  ["misaligned", listed("out of alignment; misaligned; out of line with"), []],
  ["sticking", listed("gummed with old grease; gummed with old oil; stuck with old grease; gummed up with old grease; gummed up stiff; stiff to move; hard to move; slow to return; stiff to turn; a bit stiff; tight to turn; not moving freely"), []],
];
