import { partWords } from "./lexicon.ts";
import { listed } from "./listed.ts";
import { FILLERS } from "./sayings.ts";

/**
 * Everyday words that name no part, no fault and no work: nobody needs to be asked what they mean. In their plain form; endings are taken off before
 * a word is looked up. A word that names a part on some reel ("line", "pin", "cap", "wheel") is not among them.
 */
const PLAIN: ReadonlySet<string> = new Set(listed(`able; access; account; act; actual; add; address; admit; afford; afternoon; agree; air; airing; allow; alone; altogether; amaze; amount; angler;
  angry; anniversary; announce; another; answer; anybody; anyone; anything; anyway; apologise; appeal; apply; appoint; appreciate; approx; april;
  argue; arrange; arrive; article; attach; attempt; attend; attention; august; aunt; auto; autumn; avoid; await; aware; baby; bank; bay; bear;
  beat; become; bed; beer; before; behave; belong; benefit; beside; bet; between; big; bike; bird; birthday; bite; blame; blank; bless; blew;
  bloke; blow; blue; boat; boil; bone; book; boot; bored; boss; bother; bottle; bottom; boy; brass; breakfast; breeze; brilliant; broke; brother;
  brown; budget; build; bunch; business; busy; buyer; cake; call; calm; camera; camp; can; canal; capable; card; care; careful; carry; cash;
  casting; catch; cause; ceiling; celebrate; cent; certain; chance; channel; chat; cheer; cheese; child; choice; choose; christmas; church;
  cigarette; city; claim; class; clever; client; climb; clock; close; cloth; club; coast; coffee; coin; colour; come; comfort; comment; committee;
  common; company; complain; complaint; concern; condition; confirm; confuse; congratulate; consider; contact; content; continue; conversation;
  cook; copper; copy; corner; cottage; could; count; country; county; course; cousin; cow; crazy; credit; crook; cross; crowd; cry; culprit;
  curious; current; customer; damage; dance; danger; dare; daughter; dear; december; decent; decide; deep; definite; deg; degree; delay; delight;
  deliver; demand; depend; describe; description; deserve; detail; determine; devil; diesel; different; difficult; difficulty; dig; dinkum; dinner;
  direct; direction; disappoint; disaster; discover; discuss; dish; distance; divide; doctor; dollar; door; double; doubt; drain; draw; dream;
  dress; drink; dropping; due; dug; dull; duty; each; ear; earn; east; easter; eat; effect; effort; eight; electric; else; email; employ; empty;
  enclose; encourage; engage; engine; enjoy; enough; enter; enthusiast; envelope; equal; especially; estimate; europe; evening; event; eventually;
  ever; every; everybody; everyone; everywhere; evidence; exact; example; excellent; exchange; excite; excuse; exist; expense; experience; expert;
  explain; express; extend; eye; fact; fail; fair; faith; fall; familiar; family; famous; fan; farm; fashion; favour; favourite; fear; february;
  fee; feed; fella; fellow; few; field; fifteen; fifty; fight; figure; fill; film; final; finger; fire; firm; fish; fishing; five; flew; follow;
  fond; food; fool; football; force; foreign; forever; forget; forgot; forgotten; form; forty; forum; forward; four; free; freezer; friday; friend;
  frog; frost; fuel; full; fun; future; game; garden; gas; gave; general; gentle; gentleman; gift; girl; given; glad; glass; goes; going; gold;
  gonna; goodbye; goodwill; got; grandad; grandfather; grandson; grass; grateful; great; green; grey; ground; group; grow; guarantee; guess; guest;
  gun; gunnel; guts; guy; hair; half; hall; hand; handy; hang; happen; happy; hard; harm; hate; health; hear; heart; heaven; heavy; hello; help;
  hence; hero; hide; high; hill; hire; history; hobby; holiday; home; honest; honour; hook; hookset; horse; hospital; hot; hotel; house; however;
  huge; human; hundred; hurry; hurt; husband; ice; idea; ideal; identify; ignore; ill; imagine; immediate; import; important; impossible; impress;
  improve; include; income; indeed; information; ingress; inherit; initial; inlet; innocent; insist; inspect; inspection; insurance; intend;
  interest; international; internet; invite; involve; ish; island; item; january; jig; jigging; join; joke; journey; joy; july; june; keen; kid;
  kill; kilo; kind; king; kitchen; know; labour; lack; ladder; lady; lake; land; lane; language; laptop; large; late; laugh; law; lay; lazy; learn;
  leave; left; legal; lend; lesson; letter; library; lie; life; lift; like; likely; limit; list; litre; live; local; lonely; long; look; lorry;
  lose; lot; loud; love; low; luck; lunch; machine; mad; magazine; magic; mail; man; manage; manager; many; march; market; marry; master; match;
  matter; may; maybe; meal; mean; meant; meantime; meanwhile; measure; meat; meet; meeting; member; memory; mention; mess; message; met; metre;
  midday; middle; midnight; might; mile; milk; million; mind; mine; minute; miss; mistake; mix; moan; mobile; moment; monday; money; monster;
  month; mood; moon; moral; more; morning; most; mother; mountain; mouth; move; mud; mum; museum; mush; music; must; nah; name; narrow; nasty;
  nation; natural; nature; near; neat; necessary; need; neighbour; neither; nephew; nervous; never; new; news; newspaper; night; nine; nobody; nod;
  none; noon; normal; north; note; nothing; notice; november; number; object; observe; obvious; occasion; october; odd; offer; offered; office;
  officer; often; okay; once; onto; open; opinion; opportunity; opposite; option; orange; order; ordinary; organise; original; ought; outfit;
  outing; overboard; overnight; own; page; pain; paper; parcel; pardon; parent; park; parking; particular; partner; party; pass; past; path;
  patience; pattern; pause; pay; payment; pce; peace; pence; penny; people; perfect; perhaps; period; permanent; permission; permit; person;
  personal; pet; petrol; phone; photo; pick; picture; piece; pig; pink; pity; place; plan; plane; plastic; pleasant; please; pleasure; plenty; pls;
  point; police; polite; pond; pool; poor; popular; porch; position; possible; postage; pound; pour; power; practice; pray; prefer; prepare;
  present; press; pressure; pretend; previous; price; pride; print; private; prize; probable; problem; produce; product; profit; programme;
  progress; project; promise; proof; proper; protect; proud; prove; provide; public; pull; purchase; pure; purple; purpose; push; puzzle; quality;
  quarter; queen; question; queue; quick; quiet; quit; quite; quote; race; rain; raise; random; rang; range; rare; rate; rather; rcvd; reach; read;
  ready; realise; reason; recd; receipt; receive; recent; recognise; recommend; record; recover; red; reduce; reed; reeling; refer; reflect;
  refund; refuse; regard; regret; regular; relation; relative; relax; release; rely; remain; remark; remember; remind; remote; rent; rep; repairer;
  repeat; replacement; reply; report; reproduce; reqd; request; require; reserve; respect; respond; rest; restaurant; result; retest; retire;
  retrieve; return; reveal; rich; rid; ride; right; rise; risk; river; road; rock; roll; roof; room; round; row; rub; rubbish; rule; rush; sad;
  safe; said; sail; salary; sale; sand; sandwich; satisfy; saturday; save; scale; school; science; scuba; sea; search; season; second; secret;
  section; see; seek; seem; sell; send; sense; separate; september; series; serious; serve; settle; seven; several; severe; shade; shake; shall;
  shame; share; sharp; sheet; shelf; shine; ship; shirt; shock; shoe; shoot; shop; shore; short; shout; show; shower; sick; sight; sign; signal;
  silence; silent; silly; silver; similar; simple; since; sincere; sing; single; sir; sister; sit; sitting; situation; six; size; skin; skipper;
  sky; sleep; slid; slight; slow; small; smart; smell; smile; smoke; smooth; snow; social; soft; soldier; solid; solution; solve; some; somebody;
  someone; something; sometime; somewhere; son; song; soon; sort; sound; soup; south; space; spare; speak; special; species; speed; spell; spend;
  spirit; sport; spot; spray; spread; square; staff; stain; stairs; stamp; stand; standard; start; startup; state; station; stay; steady; steal;
  steel; step; stick; still; stock; stomach; stone; stop; store; storm; story; straight; strange; stream; street; strength; strike; string; strip;
  strong; structure; student; study; stuff; stupid; style; subject; success; such; sudden; suffer; sugar; suggest; suit; summer; sun; sunday;
  super; supper; supplier; supply; support; suppose; sure; surface; surprise; surround; swear; sweep; sweet; swim; table; tad; take; tale; talk;
  tall; tap; taste; tax; taxi; tea; teach; team; tear; telephone; television; tell; temper; temporary; ten; tend; term; terrible; test; text; tgt;
  thank; themselves; therefore; thick; thief; thin; thing; think; third; thirty; thought; thousand; threat; three; throw; thrown; thumb; thursday;
  thus; ticket; tide; tidy; tie; till; tin; tiny; tip; tire; title; tobacco; today; together; tomorrow; tone; tonight; tool; topic; total; touch;
  tour; tournament; toward; towel; tower; town; toy; trace; track; trade; traffic; train; transit; travel; treat; tree; trial; trick; trip; troll;
  trolling; trophy; trouble; truck; true; trust; truth; try; tuesday; tune; turn; twelve; twenty; twice; two; type; ugly; uncle; understand;
  unhappy; unit; unite; university; unless; until; unusual; upset; usual; vacation; valley; value; van; various; vast; very; video; view; village;
  visit; visitor; voice; wage; wait; wake; walk; wall; want; war; warm; warn; warranty; wash; waste; watch; water; wave; way; wealth; weather; web;
  website; wedding; wednesday; week; weekend; weigh; welcome; well; west; wet; what; whenever; wherever; whether; while; whisper; white; whoever;
  whole; whom; whose; wide; wife; wild; will; win; wind; winding; window; wine; winter; wise; wish; within; without; woman; wonder; wood; word;
  work; worker; world; worry; worse; worst; worth; would; write; written; wrote; yard; yds; yeah; year; yellow; yesterday; yet; young; zero; unrepaired; backlash; melt; binned; overtighten; weed; wrap; she; you; wax; batteries; tourney; ipa; tar; toffee; sandpit; beer; pop; pick; misc; sundries; refurb;
  recondition; discontinue; secondhand; fri; thurs; mon; tues; wed; sat; sun; jan; feb; mar; apr; jun; jul; aug; sept; oct; nov; dec; yrs; mins; secs; max; min; prev; incl; labor`));

const ENDINGS: readonly (readonly [ending: RegExp, instead: readonly string[]])[] = [
  [/ies$/, ["y"]], [/es$/, ["", "e"]], [/s$/, [""]], [/ied$/, ["y"]], [/ed$/, ["", "e"]], [/ing$/, ["", "e"]], [/ly$/, ["", "e"]], [/ier$/, ["y"]], [/er$/, ["", "e"]],
  [/est$/, ["", "e"]], [/nt$/, [""]],
];

/** The plain forms a word may come from: itself, without its ending, and with a doubled letter made single. */
function forms(word: string): string[] {
  return [word, ...ENDINGS.flatMap(([ending, instead]) => {
    if (!ending.test(word) || word.length < 5) return [];
    const stem = word.replace(ending, "");
    return [...instead.map((end) => stem + end), ...(/([a-z])\1$/.test(stem) ? [stem.slice(0, -1)] : [])];
  })];
}

const answers = new Map<string, boolean>();
const REMEMBERED = 50_000;

/**
 * Whether a word is an everyday one, so that nobody needs to be asked what it means.
 *
 * @example
 * isPlain("arrived") // => true
 * isPlain("gizmo") // => false
 */
export function isPlain(word: string): boolean {
  const before = answers.get(word);
  if (before !== undefined) return before;
  const answer = PLAIN.has(word) || FILLERS.has(word) || (!partWords.has(word) && forms(word).some((one) => PLAIN.has(one) || FILLERS.has(one)));
  if (answers.size >= REMEMBERED) answers.clear();
  answers.set(word, answer);
  return answer;
}
