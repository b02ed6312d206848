import { benchNotes, complaints, complaintShares } from "../../records/vocabulary.ts";
import { reelCard, type ReelCard, type ReelOnBench } from "../../answers/card/reel-card.ts";
import { EVERYTHING } from "../../answers/filter.ts";
import type { BenchRates } from "../../answers/labour/bench-rates.ts";
import { earnings } from "../../answers/labour/earnings.ts";
import { labour } from "../../answers/labour/labour.ts";
import { quote, type Quote } from "../../answers/labour/quote.ts";
import { timedWork } from "../../answers/labour/work.ts";
import { restock } from "../../answers/stock/restock.ts";
import { workInWorker } from "../../answers/wear/work-in-worker.ts";
import type { Engine, Report } from "../../db/engine.ts";

export { benchNotes, complaints };

/** The whole card: where to look, what to have ready, what it takes and costs. */
export interface CardSheet { readonly card: ReelCard; readonly quote: Quote | null; readonly job: string }

/** What the card is asked for. */
export interface CardQuestion { readonly reel: ReelOnBench; readonly job: string; readonly today: string; readonly rates: BenchRates }

/** Puts the card together; the wear is worked out in a worker. */
export const askCard = (engine: Engine, { reel, job, today, rates }: CardQuestion) => async (signal: AbortSignal, report: Report): Promise<CardSheet> => {
  report({ step: "Looking at the shelf", done: 0, total: null });
  const { lines } = await restock(engine, { as_of: today }, signal);
  const card = await reelCard(engine, reel, { usual: complaintShares, complaints }, lines, { signal, report, work: workInWorker });
  const filter = { ...EVERYTHING, reel_kind: reel.reel_kind }, { rows } = await labour(engine, filter, signal), work = await timedWork(engine, filter, signal);
  return { card, job, quote: quote(rows, earnings(work, rates).rows, rates, { job, reel_kind: reel.reel_kind, maker: reel.maker, model: reel.model }) };
};
