import { listed } from "./listed.ts";
import type { Say } from "./sayings.ts";

/** Plainer and rougher ways to say what was done, what is wrong and how it is (common practice, no source). Codes are those of the actions. */
export const FURTHER_DONE: readonly (readonly [code: string, phrases: readonly string[]])[] = [
  ["REPL", listed(`bent one up; bent up a new; bent up one; knocked one up; put a new one on; stuck a new one in; stuck a new one on; stuck in a new; stuck a new;
    slapped a new; slapped in a new; bunged in a new; bunged a new; whacked in a new; whacked a new; threw in a new; dropped in new; dropped in a new;
    dropped a new one in; popped in new; popped in a new; popped a new one in; popped a new; popped new; swapped for new; new uns; new uns in; new un;
    new un in; new ones put in; binned and replaced; binned and renewed; subbed out; subbed in; subbed for; put another; fitted a replacement; fitted a genuine;
    fitted an aftermarket; new went in; in went a new; in went new; treated to new; treated to a new; given new; given a new; spare fitted; spare put in;
    one from spares; new from stock; ex stock; machined up a new; printed a; 3d printed a; new part in; replacement put in; put a replacement in; 
    exchanged for new; changed like for like; exchange; replacing with new; retrofitted`)],
  ["CLEAN", listed(`degrimed; degummed; de gummed; pulled and cleaned; rinsed through; soaked overnight; wiped over; brushed off; brushed out; brushed clean;
    scrubbed up; scrubbed clean; jet washed; blown clean; picked clean; scraped off; cleaned up nicely; cleaned up well; cleaned up ok; cleaned up fine;
    flushed with solvent; hosed down; washed thoroughly; cleaned thoroughly; flushed twice; cleaned by hand; steam cleaned; polished clean; shampooed; dry out`)],
  ["LUBE", listed(`put new grease; put new grease in; put new grease on; put fresh grease; put fresh grease in; put fresh grease on; put new oil; put some grease; put some oil; dabbed; slathered; lubricate; re lubricated; relubricated; lubing; 1 drop each; 2 drop each; two drop each; 1 drop; repack; grease only; oil only;
    oiled only; lubed only; smeared with; spritz of oil; regrease; relube; reoil; greased only; grease lightly; oil lightly; fed with oil; rehydrated; moistened with oil`)],
  ["ADJ", listed(`clicked back; clicked back in; sprung back in; re hung; dialled in; tweaked back; set back; nudged back; nudged over; re spaced; turned the other way;
    turned other way; gave it a stretch; stretched a bit; bent open; opened out; closed up a touch; backed it off; backed off a touch; loosened off;
    re aligned; lined up; stacked right; stacked correctly; put right way round; put right way up; stacked in the right order; put in the right order; put in order;
    put in right order; moved across; moved over to; seated; seated properly; align; realign; retension; restack; seated correctly; sat right; swapped hand`)],
  ["STRAIGHT", listed(`rolled true; rolled back true; straightened cold; tweaked straight; rolled; bent back by hand; pulled back; pulled back out; bent back out; pushed back out`)],
  ["REPAIR", listed(`super glued; stuck down; ran a tap through; chased thread; chased the thread; chased thread out; buffed out; lapped in; re threaded; rethreaded; filled;
    rubbed smooth; filed flat; filed true; deglaze; weld; solder; bond; lap; skim; dressed up; dressed out; dressed smooth; dressed with a file; sanded flat; sanded back`)],
  ["TIGHT", listed(`nip; tightened down; pulled up tight; did it up; done up tight; done up proper; cinched up; tightened back up; wound tight; torqued up; torqued down; done up properly`)],
  ["ORDER", listed(`in the post; none here; none on the shelf; need to get; chasing supplier; with supplier; from the states; ran out; out of print;
    on special order; part to come; parts to come; new one to come; when it comes; when in stock; supplier has none; on the next order; order in; have ordered`)],
];

/** Words said of any part at fault without saying what is wrong, and the grade they prove. */
export const FURTHER_FAULTY: readonly (readonly [grade: 3 | null, words: readonly string[]])[] = [
  [3, listed("crook; shagged; banjaxed; borked; dud; dead as a dodo; worn beyond saving; gone west; scrap iron; only fit for the bin")],
  [null, listed(`clagged; clagged up; gunked up; bunged up; screams; raspy; gravelly; graunching; graunches; rumble; rumbles; rumbling; rumbled; soggy; spongy; dicky; grotty; grubby;
    scarred; bashed; bashed in; not true; clacking; clacks; howls; howled; dried up; glued up; gummed up; varnished; peppered; rough as guts; rough as; unhooked;
    unclipped; overtight; over tightened; furred; dry as a bone; lost its temper; unhappy; growl; grumbles; grumbly; scratchy; tinny; sticks; stuck up;
    sluggish to return; noisey; gone sloppy; gone stiff; gone slack; gone tight; gone rough; gone noisy; seen better days; bound up; locking up; wallowed; wallowed out; distorted;
    snatching; grabbing; grabs; grabby; lumps; crusted; crusted up; crusty with salt; coming apart; starting to split; delaminated; delaminating`)],
];

/** Further ways to name what is wrong; the families for which a reading holds (none: all). */
export const FURTHER_WRONG: readonly (readonly [mode: string, phrases: readonly string[], families: readonly string[]])[] = [
  ["missing", listed("awol; gone awol; lost overboard; left out; not there; nowhere to be found"), []], ["broken", listed("shattered; in bits; snapped clean through; gone in half"), []],
  ["stripped", listed("crossthreaded; cross threaded"), []], ["play", listed("egg shaped; ovalised; gone oval"), []], ["perished", listed("rock hard; set hard"), ["seal"]],
];

/** Further sayings. */
export const FURTHER_SAYS: readonly (readonly [say: Say, phrases: readonly string[]])[] = [
  ["good", listed(`spins lovely; spins nice; spins nicely; turned nice; turns nice; turns nicely; runs lovely; runs nice; looks alright; looks all right; near new; passable;
    plenty left; re usable; reusable; holding up; held up; pristine; checked out ok; checks out; checks out ok; not bad; not too bad; no dramas; reads ok; within spec; came up ok;
    fine for another; fine for its age; good for its age; ok for its age`)],
  ["later", listed("needs doing; needs doing soon; near the end; one more season; when he can; next off season; at some point; sooner or later")],
  ["declined", listed(`thinking about it; will think about it; decided against; did not want to pay; said leave it; leave for now; left as found; not now; not this time; no budget;
    cant afford; back it went; put back as was; same one back; old one back; as found; untouched; only wanted a clean; didnt bother; not bothering; he passed on it`)],
];
