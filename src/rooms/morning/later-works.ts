import { BENCH_HOURS_SETTING, readBenchHours } from "../../answers/bench-load/bench-hours.ts";
import { packedBench } from "../../answers/bench-load/bench-records.ts";
import type { BenchLoad } from "../../answers/bench-load/bench-load.ts";
import { workInWorker } from "../../answers/bench-load/work-in-worker.ts";
import { verdictsInWorker } from "../../answers/failures/judge-in-worker.ts";
import { sizeQuestions, type PartIdentity } from "../../answers/interchange/interchange-groups.ts";
import partsSql from "../../answers/interchange/parts.sql?raw";
import { lotsInWorker } from "../../answers/lots/lots-in-worker.ts";
import { adviceScore } from "../../answers/morning/advice-score.ts";
import { watchedNames, worthWatching, type Watch } from "../../answers/morning/worth-watching.ts";
import { askReplay } from "../../answers/replay/ask-replay.ts";
import { replayInWorker } from "../../answers/replay/replay-in-worker.ts";
import type { Replay } from "../../answers/replay/replay.ts";
import { BENCH_CALENDAR_SETTING, readClosures } from "../../answers/season/bench-calendar.ts";
import { conflicts } from "../../records/merging/conflicts.ts";
import { names } from "../../records/merging/names.ts";
import { OPEN_WORDS_SETTING, readOpenWords, wordsWaiting } from "../../records/notes/open-words.ts";
import { SPELLING_SETTING, spellingsFrom } from "../../records/notes/spellings-text.ts";
import { rowsOfRejects } from "../../records/rows-to-fix.ts";
import { KeptAnswer } from "../../ui/kept-answer.ts";
import { promisePart, ticketsPart } from "./bench-items.ts";
import type { KeptRecords, LaterName, LaterWork, MorningAsk, Told } from "./later-parts.ts";
import { answersWaiting, recordsPart, scorePart } from "./record-items.ts";
import { watchPart } from "./watch-items.ts";

/** Who comes back to the sheet waits no second time. */
const loads = new KeptAnswer<BenchLoad>(), watches = new KeptAnswer<Watch>(), scores = new KeptAnswer<Replay>();

async function tickets({ kept }: MorningAsk): Promise<Told> {
  return { part: ticketsPart(await (await kept.bench()).tickets()), figures: {} };
}

/** Words and wordings of notes that wait for an answer. */
const words = (kept: KeptRecords) => kept.consult(async (_, ledger) => wordsWaiting(
  readOpenWords(await ledger.setting(OPEN_WORDS_SETTING)).open, spellingsFrom(await ledger.setting(SPELLING_SETTING)), (await ledger.batches()).map(({ id }) => id)));

async function records({ engine, kept, hand_groups, before }: MorningAsk, signal: AbortSignal): Promise<Told> {
  const rows = rowsOfRejects(await kept.rejects()).length, parts = await engine.rows<PartIdentity>(partsSql, {}, signal);
  const [open, written] = await kept.consult(async (of, ledger) => [await conflicts(of, signal), await names(of, ledger)] as const);
  const waiting = { rows, conflicts: open.length, names: written.proposed.length, sizes: sizeQuestions(parts, hand_groups).length, words: await words(kept) };
  return { part: recordsPart(waiting, before), figures: { to_answer: answersWaiting(waiting) } };
}

/** Hours and closed days as the owner wrote them; a setting that cannot be read is said in its room, Season. */
const benchTime = (kept: KeptRecords) => kept.consult(async (_, ledger) => ({
  hours: readBenchHours(await ledger.setting(BENCH_HOURS_SETTING)).hours, closures: readClosures(await ledger.setting(BENCH_CALENDAR_SETTING)).closures,
}));

const promise = ({ engine, kept, version, as_of, rates, before }: MorningAsk): LaterWork => async (signal, report) => {
  const settings = { ...(await benchTime(kept)), rates };
  const load = await loads.of(JSON.stringify([version, as_of, settings]), async () => workInWorker("load", await packedBench(engine, as_of, settings, signal), { signal, report }));
  return { part: promisePart(load, before), figures: { backlog_hours: load.status === "ok" || load.status === "no hours" ? load.backlog.hours : null } };
};

const watch = ({ engine, version, before }: MorningAsk): LaterWork => async (signal, report) => {
  const ways = { verdicts: verdictsInWorker, lots: lotsInWorker } as const;
  const found = await watches.of(String(version), () => worthWatching(engine, ways, { signal, report }));
  return { part: watchPart(found, before), figures: { watch: watchedNames(found) } };
};

const score = ({ engine, version, as_of, rule_changes, targets }: MorningAsk): LaterWork => async (signal, report) => {
  const replay = await scores.of(JSON.stringify([version, as_of, rule_changes, targets]), () => askReplay(engine, { as_of, rule_changes, targets }, { signal, report, work: replayInWorker }));
  return { part: scorePart(adviceScore(replay), replay.verdict[0] ?? ""), figures: {} };
};

/** The work behind each part that comes in after the first picture. */
export function laterWork(name: LaterName, ask: MorningAsk): LaterWork {
  switch (name) {
    case "tickets": return () => tickets(ask);
    case "records": return (signal) => records(ask, signal);
    case "promise": return promise(ask);
    case "watch": return watch(ask);
    case "score": return score(ask);
  }
}
