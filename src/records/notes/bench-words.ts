/** What is said of a part besides what was done to it and what is wrong with it. */
export type Say =
  | "doubt" | "later" | "declined" | "not" | "without" | "good" | "routine" | "both" | "all" | "rest" | "whole job" | "neutral" | "opened" | "elsewhere" | "needs" | "same";

/** Ways of saying it (common practice, no source). */
export const SAYS: Readonly<Record<Say, readonly string[]>> = {
  doubt: [
    "poss", "possibly", "possible", "maybe", "looks like", "look like", "suspect", "suspected", "borderline", "might be", "could be", "perhaps",
    "starting to", "slightly", "a bit", "bit", "seems", "not sure", "probably", "prob", "looks", "slight", "i think", "think its",
  ],
  later: [
    "next time", "will need", "needs next time", "advise", "advised", "advising", "monitor", "monitoring", "to watch", "watch it", "recommend", "recommended",
    "next service", "next visit", "next winter", "next year", "keep an eye", "keep eye on", "eye on", "needs watching", "soon", "before long", "for now", "live with",
    "would need", "going to need", "due next", "at next", "should be replaced", "wants doing", "will want", "starting",
  ],
  declined: [
    "customer declined", "declined", "customer say leave", "customer wants left", "did not want", "didnt want", "doesnt want", "not wanted by customer", "not replaced",
    "not changed", "not fitted", "not renewed", "did not replace", "didnt replace", "did not change", "didnt change", "didnt need", "did not need", "doesnt need",
    "does not need", "dont need", "not needed", "not required", "no need", "not touched", "left", "left alone", "left it", "left as is", "left as it is", "leave it", "leave as is",
    "leave", "say leave", "left in", "left on", "left for now", "left off", "think about it", "will think", "to decide", "customer to decide", "put back as is",
    "put back together", "to live with it", "refused", "not today", "not yet", "will do", "never replaced", "havent replaced", "wasnt replaced", "not doing", "customer to live with it",
    "customer happy to leave", "customer happy", "happy with", "goes on", "went back", "went back in", "carry on", "lives on", "happy as is", "too dear", "told customer", "told him", "told her",
  ],
  not: ["no", "not", "nil", "no sign of", "no sign", "never", "wasnt", "isnt", "werent", "without any", "free of", "nothing"],
  without: ["without", "none fitted"],
  good: [
    "ok", "good", "fine", "no issue", "checked ok", "like new", "as new", "perfect", "serviceable", "sound", "no fault", "nff", "no problem", "no prob",
    "healthy", "still good", "still ok", "straight", "still straight", "checked", "inspected", "looked at", "looked over", "mint", "smooth", "still smooth", "usable", "spot on", "as it should", "in order", "nothing wrong", "nothing wrong with",
    "no problem with", "no issue with", "no fault with", "ran fine", "ran ok", "run ok", "runs ok", "run fine", "hold fine", "test ok", "tested ok", "within limit", "even wear", "looks good",
    "looks ok", "looks fine", "passed", "excellent", "clean and dry", "true", "runs true", "run true", "worked fine", "works fine", "work fine", "good for another", "good condition", "gd",
  ],
  routine: [
    "routine", "routinely", "as standard", "preventive", "precaution", "as a precaution", "as precaution", "while in there", "whilst in there", "good measure",
    "for good measure", "service kit", "as a matter of course", "as we always do", "just in case", "as routine",
  ],
  both: ["both"],
  all: ["all"],
  rest: ["rest", "everything", "everything else", "rest of it", "the lot", "other", "otherwise", "all else", "nothing else", "nothing more"],
  "whole job": [
    "full service", "full strip", "strip clean", "full strip clean", "clean and lube", "as usual", "see last time", "usual", "cleaned and lubed", "cleaned and greased",
    "strip and clean", "clean lube", "full strip clean lube", "full strip and clean", "full clean", "stripped and cleaned", "standard service", "basic service", "full svc",
  ],
  neutral: [
    "swapped over", "moved over", "transferred", "back on", "reassembled", "rebuilt with", "tested", "drag tested", "test", "line tested", "pressure tested",
    "checked scale", "spun up", "oil bath", "put right in the post", "over filled", "overfilled", "user setting", "no drag sound", "no click", "from stock", "in stock", "no charge",
    "no leak", "no part", "no part needed", "no part required", "no new part", "no new part needed", "no slip now", "no slip", "old", "of the show", "closed up", "left to", "left hand", "left handed", "right hand", "stripped down", "stripped same day", "put back in", "so i", "set of", "not worth it", "not worth fixing", "not worth", "scrap", "scrapped", "ber", "beyond repair", "uneconomic", "not economical", "not economic", "returned", "quoted", "no reply", "no longer made",
    "not repairable", "told owner", "sent away", "tell customer", "customer informed", "informed",
  ],
  opened: ["opened", "opened up", "pulled", "pulled off", "took", "took off", "removed", "lifted", "undid", "behind", "off for access"],
  elsewhere: ["van", "trailer", "outboard", "mower", "lawnmower", "invoice", "wholesaler", "hydraulic pump", "engine", "other reel", "another reel", "his other", "different reel", "not this", "for stock", "stock order"],
  needs: ["needs", "need"],
  same: ["same", "ditto", "likewise", "as above", "the same", "too", "as well", "also"],
};

/** Words that carry no news beside a part. */
export const FILLERS: ReadonlySet<string> = new Set([
  "the", "a", "an", "its", "his", "her", "their", "this", "that", "these", "those", "was", "were", "is", "are", "has", "had", "have", "been", "be", "it", "got", "very",
  "quite", "so", "then", "now", "but", "just", "still", "again", "from", "out", "up", "in", "on", "of", "for", "to", "with", "by", "at", "off", "one", "each",
  "set", "pair", "pr", "kit", "assy", "complete", "new", "old", "spare", "part", "pc", "ea", "lot", "qty", "size", "stainless", "two", "three", "four", "five", "six", "eight", "ten", "along", "together", "hybrid", "genuine", "aftermarket", "heavy", "duty", "better", "correct", "cold", "thread", "tooth", "teeth", "face", "edge", "bore", "end", "back", "home", "square", "properly", "through", "there", "where", "while", "meanwhile", "if", "until", "his", "some", "any", "more", "most", "much", "few", "only", "could", "would", "can", "make", "did", "do", "does", "not", "all", "customer", "owner", "skipper", "him", "her", "them", "temp", "quick", "well", "me", "we", "i", "he", "she", "as", "which", "when", "after",
]);

/** What was done, in more ways than the list of actions has. Codes are those of the actions. */
export const DONE: readonly (readonly [code: string, phrases: readonly string[]])[] = [
  ["REPL", [
    "replace", "replaced", "fitted", "fit", "renew", "replacing", "put in new", "swap", "swapped", "change", "changed", "changing", "new one in", "new one", "new ones", "new set",
    "new pair", "supplied and fitted", "fitting new", "new fitted", "put new", "put a new one in", "fitted a new one", "fitted new one", "made one", "made new", "made up new", "cut one",
    "fitted set", "fitted from stock", "replaced with new", "swapped out", "changed out", "swapped for", "installed", "added new", "renewed", "new item", "substituted", "subbed",
  ]],
  ["CLEAN", [
    "clean", "cleaned", "cleaned up", "cleaned out", "flushed", "flushed out", "degrease", "degreased", "washed", "washed out", "de oiled", "de greased", "blown out", "oiled out", "rinsed out", "dried", "dried out",
    "scrubbed", "ultrasonic", "ultrasonic cleaned", "decontaminated", "descaled", "wiped", "dewatered", "oven dried", "hosed out", "brushed",
  ]],
  ["CLR", ["freed", "freed off", "freed up", "unstuck", "recovered", "brought back", "saved", "cleaned and lubed", "cleaned and greased", "cleaned and oiled", "flushed and oiled", "rescued", "revived"]],
  ["LUBE", [
    "grease", "greased", "regreased", "re greased", "oil", "oiled", "re oiled", "drop oil", "one drop oil", "one drop of oil", "lube", "lubed", "relubed", "lub", "lubricated", "lubed up", "drop of oil", "repacked", "with oil", "oiled lightly", "waxed", "packed", "greased up",
    "re coated", "recoated", "with grease", "fresh grease",
  ]],
  ["ADJ", ["adjust", "adjusted", "reset", "re set", "aligned", "corrected", "put right", "restacked", "re stacked", "re tensioned", "tensioned", "tweaked", "turned round", "reversed", "flipped", "sorted", "sorted out", "put right again", "backed off half", "trimmed"]],
  ["SHIM", ["shim added", "shimmed", "re shimmed", "added shim", "removed shim", "meshed", "added"]],
  ["STRAIGHT", ["straighten", "straightened", "bent straight", "bent back", "bent back to shape", "reformed", "reshaped", "trued", "trued up"]],
  ["REPAIR", ["repaired", "glued", "soldered", "welded", "repair", "rebuilt", "filed", "eased", "chased", "fettled", "dressed", "polished", "polished out", "deburred", "re riveted", "deglazed", "stretched", "machined", "lapped", "honed", "stoned", "sanded", "scuffed", "peened", "peened over", "rubbed down", "re bushed", "superglued", "wired up", "bushed", "patched", "epoxied", "sleeved", "plugged", "pressed back", "pressed in", "turned over", "swapped ends"]],
  ["TIGHT", ["tighten", "tightened", "re tightened", "retightened", "nip up", "nipped up", "threadlocked", "locked it"]],
  ["EXTRACT", ["drilled", "drilled out", "drill out", "extracted", "thread insert", "thread insert fitted", "thread insert put in", "insert fitted", "re tapped", "retapped", "tapped", "screw extractor", "heat and penetrating oil"]],
  ["RESEAL", ["resealed", "reseated", "re seated", "refitted seal"]],
  ["REFIT", ["refitted", "refit", "put back", "refitted old", "dry fitted", "fitted dry"]],
  ["MODIFY", ["upgraded", "upgrade", "modded", "converted", "modified"]],
  ["DONOR", ["donor", "salvaged", "from donor", "second hand part", "used part", "from parts reel", "off parts reel", "off another reel fitted"]],
  ["ORDER", [
    "on back order", "back order", "on order", "ordered", "need to order", "to order", "not in stock", "out of stock", "none in stock", "no stock", "no spare", "no spare to be had",
    "awaiting", "awaiting part", "awaiting parts", "waiting for", "waiting on", "wait for", "wait on", "on the way", "on its way", "waiting part", "to come", "coming from", "due in", "not available", "unavailable", "need one", "need a new one", "available", "none left", "cant get", "cannot get", "cant find", "unobtainable", "none about", "none to be had", "sourcing", "special order", "nos",
    "needed", "wanted", "chasing", "being ordered", "no longer available", "backordered",
  ]],
];

/** Words said of any part at fault without saying what is wrong, and the grade they prove. */
export const FAULTY: readonly (readonly [word: string, grade: number | null])[] = [
  ["gone", 3], ["shot", 3], ["knackered", 3], ["dead", 3], ["buggered", 3], ["kaput", 3], ["had it", 3], ["finished", 3], ["useless", 3], ["wrecked", 3], ["ruined", 3], ["toast", 3],
  ["done for", 3], ["bad", null], ["faulty", null], ["us", null], ["duff", null], ["stuffed", 3], ["rubbish", null], ["failed", 3], ["rough", null], ["noisy", null], ["poor", null],
  ["weak", null], ["dirty", null], ["filthy", null], ["leaking", null], ["weeping", null], ["on its way out", null], ["on its last leg", null], ["last leg", null], ["past its best", null], ["not good", null], ["chipped", null],
  ["fogged", null], ["rattles", null], ["not turning", null], ["stuck", null], ["grinding", null], ["not working", null],
];

/** More ways to say what is wrong; the families for which a reading holds (none: all). */
export const WRONG: readonly (readonly [mode: string, phrases: readonly string[], families: readonly string[]])[] = [
  ["galled", ["chewed up"], []],
  ["play", ["worn oval", "oval", "sloppy"], []],
  ["slipping", ["intermittent", "wont grip", "slip", "slipped", "wont hold", "not gripping"], ["one-way clutch"]],
  ["pinched", ["nipped", "trapped", "nicked", "cut"], ["seal"]],
  ["over-greased", ["full of grease", "thick grease", "packed with grease", "grease on"], ["one-way clutch", "ball bearing"]],
  ["contaminated", ["oily", "greasy", "grease on", "full of oil", "oil soaked", "wet", "swollen"], ["drag washer"]],
  ["glazed", ["burnt", "shiny", "polished smooth"], ["drag washer"]],
  ["salt deposit", ["full of salt", "salt packed", "salted"], []],
  ["sand", ["full of dirt", "full of grit", "full of mud", "gritty"], ["gear", "line roller", "drag washer", "lever or pawl", "structure"]],
  ["seized", ["rusted in", "stuck fast", "seized up", "seized solid", "solid", "stuck with salt"], []],
  ["pitted", ["corroded in", "corroded through", "corroding"], []],
  ["surface rust", ["gone rusty"], []],
  ["worn", ["worn thin", "wore", "well worn", "badly worn", "worn to a point", "worn away", "worn flat", "score", "scoring"], []],
  ["grooved", ["cut through", "groove starting", "cut by line"], ["line roller", "structure"]],
  ["broken", ["snapped off", "snapped clean off", "broken off", "sheared off", "fell apart", "in half", "in two", "in pieces", "disintegrated", "collapsed"], []],
  ["chipped tooth", ["stripped 2 tooth", "stripped 3 tooth", "stripped two tooth", "tooth stripped", "stripped tooth", "missing 2 tooth", "missing two tooth", "missing 3 tooth", "missing three tooth", "tooth missing", "tooth jammed", "tooth gone", "tooth broken", "chipped", "stripped", "stripped gear", "missing a tooth", "teeth gone", "tooth chipped"], ["gear"]],
  ["bent", ["kinked", "buckled"], ["shaft", "structure", "lever or pawl", "knob", "washer or shim"]],
  ["stripped", ["thread gone", "stripped", "thread stripped", "stripped thread in", "rounded off"], ["screw", "structure", "knob"]],
  ["loose", ["backed out", "turn loose", "undone", "came undone", "working loose"], []],
  ["wrong part", ["upside down", "wrong way round", "fitted wrong", "wrong way", "in wrong", "wrong order", "order wrong", "out of order"], []],
  ["missing", ["left out by", "gone missing", "not fitted by", "lost by customer", "lost"], []],
  ["flattened", ["flat", "squashed", "gone flat"], ["seal"]],
  ["compressed", ["flat", "squashed", "thin"], ["drag washer"]],
  ["glazed sleeve", ["flat", "glazed"], ["line roller", "bushing"]],
  ["fatigue break", ["broken", "snapped", "broke", "bust", "let go"], ["spring"]],
  ["perished", ["cracked", "split", "hard", "gone hard"], ["seal"]],
  ["abraded seal", ["worn", "lip worn"], ["seal"]],
  ["corroded contact", ["green"], ["electrical", "seal"]],
  ["water inside", ["water in the", "water inside it", "waterlogged", "full of water"], []],
  ["brittle plastic", ["gone sticky", "sticky to touch", "tacky"], ["knob"]],
  ["end of life", ["tired", "past it"], []],
  ["not written", ["torn"], ["seal"]],
];

/** Words after which a part is only where something happened. */
export const PLACE_ALWAYS: ReadonlySet<string> = new Set(["behind", "near", "under", "underneath", "beneath", "round", "around", "re", "about", "over", "beside", "between", "like", "against", "past", "where", "from", "into", "onto", "through", "by", "at"]);
export const PLACE_AFTER_PART: ReadonlySet<string> = new Set(["in", "on", "for", "to", "of", "off", "with", "inside"]);
