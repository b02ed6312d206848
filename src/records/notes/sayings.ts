import { listed } from "./listed.ts";

/** What is said of a part besides what was done to it and what is wrong with it. */
export type Say =
  | "doubt" | "later" | "declined" | "not" | "without" | "good" | "routine"
  | "now" | "both" | "all" | "rest" | "whole job" | "neutral" | "opened" | "elsewhere" | "needs" | "same";

/** Ways of saying it (common practice, no source). */
export const SAYS: Readonly<Record<Say, readonly string[]>> = {
  doubt: listed(`poss; possibly; possible; maybe; looks like; look like; suspect; suspected; borderline; might be; could be; perhaps; starting to;
    slightly; a bit; bit; seems; not sure; probably; prob; looks; slight; i think; think its; a touch; a little; unsure; may be; apparently; sounds
    like; feels like`),
  later: listed(`watch; defer; hold off; wait and see; keep an eye on it; to be watched; at next visit; next time; will need; needs next time; advise; advised; advising; monitor; monitoring; to watch; watch it; recommend; recommended;
    next service; next visit; next winter; next year; next season; keep an eye; keep eye on; keep an eye on; eye on; needs watching; soon; before
    long; for now; live with; would need; going to need; due next; at next; should be replaced; wants doing; will want; wants replacing; wants
    changing; wants renewing; starting; starting to go; on the way out; could do with; not urgent; down the line; in time; getting tired; getting
    worn; wear starting; getting low; will be needed; wants watching; revisit; review; keep watch; for the moment; for the time being; one to watch;
    should last; will last; last the season; see how it goes; to be replaced; to be changed; to be renewed; to be done; ask again; worth watching;
    needs an eye on; keep checking; check next time; check again; check at next; flagged; warned; suggested; deferred; nearly due; nearing the end;
    near its limit`),
  declined: listed(`none needed; none required; customer declined; declined; customer say leave; customer wants left; did not want; didnt want; doesnt want; not wanted by
    customer; not replaced; not changed; not fitted; not renewed; did not replace; didnt replace; did not change; didnt change; didnt need; did not
    need; doesnt need; does not need; dont need; not needed; not required; no need; not touched; left; left alone; left it; left as is; left as it
    is; leave it; leave as is; leave; say leave; left in; left on; left for now; left off; think about it; will think; to decide; customer to
    decide; put back as is; put back together; to live with it; will live with it; can live with it; live with it; refused; not today; not yet; will
    do; never replaced; havent replaced; wasnt replaced; not doing; customer to live with it; customer happy to leave; customer happy; happy with;
    goes on; went back; went back in; carry on; lives on; happy as is; too dear; told customer; told him; told her; not disturbed; not opened; not
    worth changing; reused; re used; reuse; not used; returned to stock; back to stock; kept; kept in; retained; customer doesnt want it; said
    leave; tell him; tell her; tell customer; tell owner; customer will see; will see; no thanks; not bothered; customer said no; said no; customer
    aware; owner aware; aware; customer not worried; not worried; wont pay; will not pay; not paying; customer will buy; source his own; will source
    his own; customer to source; customer will source; get his own; will buy; to buy; to think; take as is; takes as is; will take as is; customer
    will take as is; take it as is; can live with; cosmetic only; cosmetic`),
  not: listed(`doesnt; didnt; took it for; thought it was; mistook it for; blamed; no; not; cant; cannot; can not; couldnt; could not; wont;
    wouldnt; would not; dont; unable to; nil; no sign of; no sign; never; wasnt; isnt; werent; without any; free of; nothing; no evidence of; no
    trace of`),
  without: listed("without; none fitted"),
  good: listed(`supple; good as gold; still has life in it; will serve; no mark; no slop; hunky dory; are free; is free; free and smooth; all free; happy;
    unharmed; unaffected; not damaged; not worn; barely worn; hardly worn; hardly any wear; no sign of wear; as good as; plenty of meat; full of life; ok; good; fine; no issue; checked ok; like new; as new; perfect; serviceable; sound; no fault; nff; no problem; no prob; healthy;
    still good; still ok; straight; still straight; checked; inspected; looked at; looked over; mint; smooth; still smooth; usable; spot on; as it
    should; in order; nothing wrong; nothing wrong with; no fault found; no fault found with; no problem with; no issue with; no fault with; ran
    fine; ran ok; run ok; runs ok; run fine; hold fine; test ok; tested ok; within limit; even wear; looks good; looks ok; looks fine; passed;
    excellent; clean and dry; dry inside; clean inside; dry and clean; true; runs true; run true; worked fine; works fine; work fine; good for
    another; but running; still running; but usable; will go again; usable again; good condition; gd; within spec; in spec; no play; good nick; in
    good nick; in good order; in good shape; sweet; lovely; tidy; crisp; silky; spins freely; spins free; spin free; turn freely; turns free; runs
    free; running well; running ok; working ok; working well; holds; holding; grips; works; all there; present; undamaged; unmarked; intact; no
    damage; no wear; no rust; no corrosion; up to standard; acceptable; satisfactory; fully functional; functions ok; quiet; bright; no complaint;
    pass; still tight; secure; still fine; alright; all right; looked fine; seems good; runs sweet; spins well; still has life; still have life;
    life in them; life in it; life left in it; life left in them; plenty of life; life left; years left; good for years; within tolerance; in
    tolerance; up to scratch; surprisingly good; unworn; escaped; spared; tip top; strong; still strong; strong enough; decent; respectable;
    reasonable; turns fine; turned out fine; survived; survives; seem ok; seems ok; seem fine; seems fine; a1; ok to go; good to go; good as new; no
    need to replace; no need to change`),
  routine: listed(`routine; routinely; as standard; preventive; precaution; as a precaution; as precaution; while in there; whilst in there; good
    measure; for good measure; service kit; as a matter of course; as we always do; just in case; as routine; as part of service; part of service;
    as always; to be safe; preventative; preventatively; belt and braces; while it was open; while open; while i was in there; while i was there;
    while we were in there; while apart; while it was apart; while i was at it; while at it; included in service`),
  now: listed(`now ok; ok now; fine now; now fine; good now; now good; works now; now works; now free; free now; quiet now; now quiet; smooth now;
    now smooth; cured; all good now; runs fine now; runs ok now; holds now; now holds; holding now; now holding; better now; now better; sorted now`),
  both: ["both", "the pair"],
  all: listed("all; the lot; whole lot; them all; all of them"),
  rest: listed(`rest; everything; everything else; rest of it; other; otherwise; all else; nothing else; nothing more; all other; all the rest;
    remainder; remaining`),
  "whole job": listed(`full service; full strip; strip clean; full strip clean; clean and lube; as usual; see last time; usual; cleaned and lubed;
    cleaned and greased; strip and clean; clean lube; full strip clean lube; full strip and clean; full clean; stripped and cleaned; standard
    service; basic service; full svc; major service; full overhaul; complete service; serviced; full rebuild; strip clean lube; strip and service;
    winter service; annual service; general service; clean and oil; clean and grease`),
  neutral: listed(`just wanted; only wanted; wanted it; wanted to; wanted them; he wanted; customer wanted; owner wanted; waiting on him; waiting on her;
    waiting for him; waiting for her; waiting on reply; waiting on ok; waiting for ok; waiting on owner; waiting for owner; wait on him; from wire; of wire;
    piano wire; spring wire; stainless wire; swapped over; moved over; transferred; back on; reassembled; rebuilt with; tested; drag tested; test; line tested; pressure
    tested; checked scale; spun up; oil bath; put right in the post; over filled; overfilled; user setting; no drag sound; no click; click over;
    click in; click shut; click into; in stock; no charge; no leak; no part; no part needed; no part required; no new part; no new part needed; no
    slip now; no slip; old; of the show; closed up; left to; left handed; stripped down; stripped same day; put back in; so i; set of; not worth it;
    not worth fixing; not worth; scrap; scrapped; ber; beyond repair; uneconomic; not economical; not economic; returned; quoted; no reply; no
    longer made; not repairable; told owner; sent away; tell customer; customer informed; informed; owner informed; no work; no work done;
    collected; paid; phoned; rang; called; texted; emailed; messaged; left message; posted; invoiced; free of charge; foc; under warranty; warranty;
    claim; approved; go ahead; agreed; customer ok; test cast; cast tested; bench tested; run in; labelled; tagged; photo taken; boxed; bagged;
    touched up; painted; lacquered; respooled; new line; new braid; new backing; new mono; waiting on go ahead; awaiting go ahead; waiting on
    customer; awaiting customer; waiting for customer; waiting for go ahead; awaiting reply; drag grease; gear grease; marine grease; bearing oil;
    reel oil; seal grease; silicone grease; oring lube; drag lube; ptfe grease; lock fluid; citrus cleaner; degreaser; backing; braid; mono`),
  opened: listed(`opened; opened up; pulled; pulled off; took; took off; removed; lifted; undid; behind; off for access; dismantled; unscrewed; took
    out; lifted off; slid off; split`),
  elsewhere: listed(`van; trailer; outboard; mower; lawnmower; invoice; wholesaler; hydraulic pump; engine; other reel; another reel; his other;
    different reel; not this; for stock; stock order; his other reel; second reel; for stock only; reorder; stocktake; catalogue; for the shelf; for
    the shop; rod repair; rod ring; tip ring; landing net`),
  needs: listed("needs; need; wants new; want new; requires; require; required"),
  same: listed("same; ditto; likewise; as above; the same; too; as well; also; same again; do"),
};

/** Words that carry no news beside a part. */
export const FILLERS: ReadonlySet<string> = new Set(listed(`the; a; an; its; his; her; their; this; that; these; those; was; were; is; are; has;
    had; have; been; be; being; it; got; very; quite; so; then; now; but; just; still; again; from; out; up; in; on; of; for; to; with; by; at; off;
    one; each; set; pair; pr; kit; assy; complete; new; old; spare; part; pc; ea; lot; qty; size; stainless; two; three; four; five; six; eight;
    ten; along; together; hybrid; genuine; aftermarket; heavy; duty; better; correct; cold; thread; tooth; face; edge; bore; end; back; home;
    square; properly; through; there; where; while; meanwhile; if; until; some; any; more; most; much; few; only; could; would; can; make; did; do;
    does; not; all; customer; owner; skipper; him; them; temp; quick; well; me; we; i; he; she; as; which; when; after; ceramic; original; standard;
    std; proper; good; nice; little; big; small; fresh; light; marine; silicone; ptfe; hand; tool; bench; reel; service; today; yesterday; first;
    second; last; time; because; due; since; found; find; once; done; our; my; your; best; mm; kg; lb; hr; hrs; min; mins; wk; wks; week; day; days;
    month; year; season; eta; ago; than; before; during; already; though; although; however; else; away; down; over; into; onto; about; under; own;
    such; same; what; who; how; why; yes; no; may; might; must; shall; should; will; say; said; see; seen; saw; look; looked; feel; feeling; felt;
    heard; hear; noted; note; noticed; noise; cause; caused; causing; traced; result; fish; fishing; fished; trip; boat; rod; job; work; hour;
    price; cost; money; style; type; kind; sort; speed; high; low; normal; usual; usually; never; always; often; mostly; mainly; nearly; almost;
    fully; overall; generally; otherwise; per; via; area; bit; piece; amount; winter; summer; spring time; weekend; stack; unit; request; requested;
    half; way; halfway; monday; tuesday; wednesday; thursday; friday; saturday; sunday; morning; press; lathe; vice; file; paper; solvent; alcohol;
    acetone; compound; paste both; near; within; twice; top; bottom; middle; underneath; round; around; hole; load; side; told; show; showed; shown;
    bring; brings; brought; runs; run; ran; instead; short; itself; myself; himself; even; wash; soak; hmm; turn; turns; sec; secs; spins; spin;
    shouldnt; isnt; wasnt; arent; werent; hasnt; havent; drawer; box; bits; shelf; similar; couple; pcs; stays; fell; floor; dropped; hit; caught;
    getting; getting off; model; anywhere; regular; agent; importer; maker; factory; dealer; shop; counter top; wanted it; wants it; cupboard;
    angler; lad; kid; son; dad; father; wife; mate; friend; neighbour; guy; bloke; chap; charter; club; guest; tourist; captain; crew; deckhand;
    tonight; daily; weekly; later; earlier; recently; lately; ages; age; decade; long; longer; tomorrow; date; early; late; soon as; past; previous;
    next; beach; surf; sea; ocean; harbour; pier; jetty; rocks; river; lake; shed; garage; loft; cellar; car; truck; store; storage; bag; kayak; van
    trip; bass; pike; carp; cod; tuna; marlin; trout; salmon; shark; ray; wreck; bait; lure; asked; asks; says; thinks; knows; bought; sold; sent;
    kept; tried; try; tries; trying; started; stopped; worked; working; move; moves; moved; moving; sit; sits; sat; stands; stood; keep; keeps; let;
    lets; made; makes; making; happened; happens; appears; appeared; believe; guess; reckon; reckons; hope; hopes; assume; expect; decided; agreed;
    explained; discussed; mentioned; reported; complained; discovered; examined; diagnosed; confirmed; compared; matched; measured; weighed;
    counted; listened; listen; began; begun; continue; continues; badly; too; enough; less; least; extra; plenty; lots; loads; tiny; huge; massive;
    awful; ugly; easy; hot; warm; cool; dark; clear; different; exact; wrong; real; whole; entire; full; empty; partial; rather; pretty; fairly;
    severe; serious; mild; moderate; minor; major; typical; odd; strange; weird; funny; lucky; fast; slow; final; apart; anyway; indeed; cheap;
    worth; value; quid; euro; charge; charged; bill; billed; deposit; discount; thanks; please; sorry; photo; pic; ticket; tag; label; book; page;
    diagram; manual; ref; serial; brand; ive; im; hes; shes; theyre; thats; theres; across; among; against; upon; throughout; beyond; heat; water;
    vinegar; spray; brush; toothbrush; plier; spanner; screwdriver; punch; mallet; hammer; emery; epoxy; glue; tape; trust; risk; chance; reason;
    fault; problem; issue; trouble; story; history; record; list; total; rest of; saltwater; seawater; salt water; inside; outside; also; us; they; replacement;
    get; go; went; come; came; gave; give; put; need; use; used; using`));

/** Words after which a part is only where something happened. */
export const PLACE_ALWAYS: ReadonlySet<string> = new Set(listed(`behind; near; under; underneath; beneath; round; around; re; about; over; beside;
    between; like; against; past; where; from; into; onto; through; by; at; above; below; next; towards; via; meets; meet; touches; touching; joins;
    fouling; hitting; hits`));
export const PLACE_AFTER_PART: ReadonlySet<string> = new Set(listed("in; on; for; to; of; off; with; inside; within; outside"));
