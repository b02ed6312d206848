import { FEWEST_FOR_SHARE } from "../../answers/failures/failure-values.ts";
import { STANDS_OUT, TOO_FEW } from "../../answers/failures/judged.ts";
import { USUAL_LEVELS } from "../../answers/stock/service-levels.ts";
import { FEWEST } from "../../answers/wear/wear-words.ts";
import type { SourceName } from "./sources.ts";

/** One question a room answers: how, from how much, and what the answer is silent about. */
export interface MethodQuestion {
  readonly slug: string;
  readonly question: string;
  readonly done: readonly string[];
  readonly needs: string;
  readonly silent: string;
  /** Empty: no published method, a rule of our own or common practice. */
  readonly sources: readonly SourceName[];
}

const in100 = (share: number) => `${Math.round(100 * share)}`;

/** In the order in which one builds on the other. */
export const QUESTIONS: readonly MethodQuestion[] = [
  {
    slug: "counting", question: "Of how many? What counts as looked at, and as failed",
    done: [
      "A share is failures divided by how often the part was looked at, never by all tickets: a drag job says nothing about the line roller. Which job looks at which part is a list; you can see every share over what was written down alone, too.",
      "A part failed when it was replaced or wanted because of its state, or graded 3 and worse. Changed as routine is use, for Stock, and no failure; where a sheet of words does not say which seals are, you are asked as it comes in.",
      "A ticket counts once, however often it is brought in. Names that differ only in writing count as one; all else is asked.",
    ],
    needs: "A finished ticket with its kind of job. A ticket without a job counts only for what was written on it.",
    silent: "Anything about reels that never come in. These are reels brought here, not reels sold.",
    sources: [],
  },
  {
    slug: "range", question: "How sure is a share?",
    done: ["Beside every share stands the range in which the true one likely lies: nineteen such ranges in twenty hold it. One failure in two looked at gives 9 to 91 %, not 50 %. Reels that came together are worth a little less than as many alone, and widen it."],
    needs: `Under ${FEWEST_FOR_SHARE} looked at there are counts and no percentage.`,
    silent: "Whether the records themselves are right: a range knows only chance.",
    sources: ["range_of_share", "small_counts"],
  },
  {
    slug: "failures", question: "Is this model worse than the others?",
    done: [
      "Each part on each model is held beside the same part on all other models, on planned services, where no reel was brought in by that part. Like is compared with like: the same water, rinsing, days fished, way of coming in, sealed or not.",
      "A thin record is drawn toward the others, the thinner the more. Where models differ no more than chance makes them, that is said.",
      `Whoever looks hundreds of times finds something by chance, so all looks are counted in. A model stands out only with ${STANDS_OUT.failed} failures and more, beside ${STANDS_OUT.models} other models and more, plainly over the others and over its own other parts.`,
    ],
    needs: `${TOO_FEW.inspected} looked at, and ${TOO_FEW.expected} failures to expect if it failed like the others; else “too few”.`,
    silent: "Why. A fault goes together with a model; it may still be how these reels are used. Where that cannot be ruled out the word is “cannot tell apart”.",
    sources: ["like_with_like", "drawn_in", "thin_records", "no_difference", "many_looks", "funnel"],
  },
  {
    slug: "batches", question: "Is there a bad batch?",
    done: ["Lot numbers are mostly not written, so months of fitting are searched for a stretch in which parts of one size and supplier failed early more than they do otherwise. How often chance alone would show one like it is found by shuffling the records thousands of times within each model, so that a bad model cannot make a bad batch."],
    needs: "Serials or tags, so that a part fitted here is seen again; about 30 fitted and 8 failed early.",
    silent: "Batches of parts whose reels have not come back yet. The reels that still carry one are listed.",
    sources: ["window"],
  },
  {
    slug: "comebacks", question: "Do repairs come back?",
    done: ["The same part of the same reel failed again within 90 days of being put right. Beside it: how many later failures a reel has had on average by its age, and whether they come closer together."],
    needs: `Serials or tags. ${FEWEST_FOR_SHARE} failures for a share, 8 later ones for a trend.`,
    silent: "Reels whose next visit was elsewhere.",
    sources: ["later_failures"],
  },
  {
    slug: "wear", question: "How long does a part last?",
    done: [
      "Parts are followed, not rows: from fitting, or from the first look, over every visit until they failed or were last seen good. When a part fails is never seen, only that it was good at one visit and gone at the next; the curve is fitted to exactly that.",
      "Rinsing, water, price class and sealing are told apart together. “Wears twice as fast” means one day like this wears like two otherwise.",
      "Beside the curve stand steps that assume no curve: where the two part, believe the steps.",
    ],
    needs: `${FEWEST} failed and ${FEWEST} seen good for a curve; less gives only “at least” or “at most”.`,
    silent: "Anything beyond the longest use seen: that is shaded. A customer's days in salt are a guess, and what a fifth more or less would change is shown.",
    sources: ["between_looks", "life_limits", "steps", "grades"],
  },
  {
    slug: "advice", question: "When should a reel come in?",
    done: ["The days, or months, by which the first of the parts that matter reaches the risk you chose (one in ten, if you choose none), rounded to what a customer can remember, with its range."],
    needs: "A curve for at least one part that matters on that kind of reel.",
    silent: "A promise. It is what such reels showed here so far.",
    sources: ["between_looks", "life_limits"],
  },
  {
    slug: "card", question: "Where to look first",
    done: ["What the customer says is held against a list of usual causes, which counts like ten tickets, and against your own jobs with the same complaint; each cause weighs by how its parts have fared on this model and at the use told. From eleven tickets of your own on they outweigh the list."],
    needs: "Nothing; with no records of your own it is the list alone, and says so.",
    silent: "What is wrong with this reel. It is an order to look in.",
    sources: [],
  },
  {
    slug: "stock", question: "What to order, and how many",
    done: [
      "Parts that are the same thing under several numbers are counted together. Use to come is told in several ways, from the line's own past and from the reels expected; each is tried on your past, and the one that would have done best is used.",
      `The reorder point lasts until the next order is in, with the chance you set (${in100(USUAL_LEVELS.A)} in 100 where a job cannot be finished without the part, ${in100(USUAL_LEVELS.B)} where it can, ${in100(USUAL_LEVELS.C)} where no job waits). How long deliveries take is what they took here, not what was quoted. The order fills up to the level, in whole packs.`,
      "What money does is counted in jobs, not lines: a job goes straight through only when all its parts are there. Weeks of your own past are played through again, and the next purchase is what spares most jobs the wait per money.",
    ],
    needs: "24 pieces in two years before ways are tried on the line alone; thinner lines lean on what most lines do. Five deliveries before their days count.",
    silent: "Assorted lines, and lines without a count on the shelf: they are named and left out. After a change of habit, the first two months.",
    sources: ["seldom_used", "seldom_corrected", "dying_out", "one_for_one", "looking_back", "score"],
  },
  {
    slug: "scored", question: "Would the advice have been good?",
    done: ["Your own past is lived through again: on each order day only what was written by then is known. The advice, two habits and what happened are counted in jobs that waited, money on the shelf, orders and dead stock. What was worse is said as well."],
    needs: "A year of records before the first day counted, with parts used and orders.",
    silent: "What customers would have done, and prices as they were then.",
    sources: ["looking_back"],
  },
  {
    slug: "season", question: "How many reels will come, and what date to promise",
    done: [
      "Several ways of looking ahead are tried on your past; the one that would have done best is used, and how far it missed sets the range.",
      "The promise comes from a thousand futures of your own bench: what is in the shop goes first, each job takes its time, and waits if a part is missing. The date named is one that eight in ten keep. How such dates would have been kept over the last year stands beside it.",
    ],
    needs: "A year of tickets for a season, two to see it twice; under that the range is wide and says so. Minutes on jobs for hours; your hours a week, or those of busy weeks stand for them.",
    silent: "A new rival, a fishing ban, a club that leaves: it knows only the past.",
    sources: ["looking_back", "score", "scaled_miss"],
  },
  {
    slug: "labour", question: "How long does a job take, and what does an hour bring in?",
    done: [
      "Half of the jobs take less than the usual time, eight in ten less than the time to quote from. A model with few jobs leans on the others of its job and kind.",
      "Hours typed as minutes and waiting counted as work are set aside and listed, never corrected in silence. What goes with longer jobs is compared within the same job, kind and model.",
      "What an hour brings in is all charges over all hours.",
    ],
    needs: "Ten jobs for a model of its own, 20 for a change over the years.",
    silent: "Who is fast. People are listed by name and year, for training and the mix of jobs, never by speed.",
    sources: ["times", "bad_day"],
  },
  {
    slug: "notes", question: "How are notes read?",
    done: ["Words are looked up in a list of spellings and of yours, parts are joined with what is said and done beside them, and each finding keeps its words, the rule and how often that rule is right. Words that are not known are listed and asked once."],
    needs: "Nothing; a note it cannot read stays a note.",
    silent: "What is not written. On notes made up for the test, and never read while the rules were made, 95 of 100 parts named were right and 81 of 100 there were found.",
    sources: [],
  },
];

/** What holds everywhere, and has no source but ours or common practice. */
export const TAKEN_FOR_GRANTED: readonly string[] = [
  "A job of a kind opens what the list says it opens, in your shop as in others.",
  "Days in salt and in use are what the customer says.",
  "A reel with the same serial or tag is the same reel; a gap in its months far longer than its visits here means a service elsewhere, and its parts are followed anew from there.",
  "Parts of one model differ among themselves by about a fifth without any being bad, and reels that came together fail alike in 5 of 100 until the records show otherwise.",
  "Where a delivery time is neither known nor quoted, 14 days; taking in and packing a reel, 15 minutes, until you write otherwise.",
];
