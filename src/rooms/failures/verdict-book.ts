import type { FailureRate } from "../../answers/failures/failure-rate.ts";
import type { Verdict, VerdictWord } from "../../answers/failures/verdict.ts";
import { modelName } from "../../answers/model-name.ts";
import { worrying } from "./verdict-words.ts";

/** The verdicts of a sheet, to be looked up by part and model. */
export interface VerdictBook {
  /** Worst word first, then by what it costs; series among them. */
  readonly all: readonly Verdict[];
  readonly of: (position: string, model: string) => Verdict | null;
  readonly parts: (model: string) => readonly Verdict[];
  readonly models: (position: string) => readonly Verdict[];
  /** Parts of a series, by the name its sizes share; worst word first. */
  readonly series: (name: string) => readonly Verdict[];
  /** The series a model is a size of, "" for none. */
  readonly series_of: (model: string) => string;
  /** What the failures of a row cost in money: of the model, or of all models the row counts. */
  readonly cost: (row: FailureRate) => number;
  /** The word of a model's row; null for a row of all models. */
  readonly word: (row: FailureRate) => VerdictWord | null;
  /** Models whose part stands out or may: for rows of all models. */
  readonly worst: (position: string) => readonly Verdict[];
}

/** `maker` "" is all makers; the league's rows of all models count only the maker chosen. */
export function verdictBook(all: readonly Verdict[], maker: string): VerdictBook {
  const single = all.filter((one) => !one.series && (maker === "" || one.maker === maker));
  const by_place = new Map(single.map((one) => [JSON.stringify([one.position, modelName(one)]), one]));
  const of = (position: string, model: string) => by_place.get(JSON.stringify([position, model])) ?? null;
  const models = (position: string) => single.filter((one) => one.position === position);
  return {
    all: maker === "" ? all : all.filter((one) => one.maker === maker), of, models, series: (name) => all.filter((one) => one.series && modelName(one) === name),
    series_of: (model) => { const [one] = all.filter((each) => each.series && each.models.some((size) => modelName({ maker: each.maker, model: size }) === model)); return one ? modelName(one) : ""; },
    parts: (model) => single.filter((one) => modelName(one) === model),
    cost: (row) => (row.model === "*" ? models(row.position) : [of(row.position, modelName(row))]).reduce((sum, one) => sum + (one?.cost.money ?? 0), 0),
    word: (row) => (row.model === "*" ? null : of(row.position, modelName(row))?.word ?? null),
    worst: (position) => all.filter((one) => one.position === position && worrying(one.word) && (maker === "" || one.maker === maker)),
  };
}

/** All verdicts that ask for the owner's eye. */
export const toWatch = ({ all }: Pick<VerdictBook, "all">): readonly Verdict[] => all.filter(({ word }) => worrying(word));
