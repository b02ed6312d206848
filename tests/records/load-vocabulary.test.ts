import { expect, test } from "vitest";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";
import { coverage, positions } from "../../src/records/vocabulary.ts";
import { openEngine } from "../db/open.ts";

test("every position and every row of coverage is in the tables once, also after loading twice", async () => {
  const engine = await openEngine();
  await loadVocabulary(engine);
  await loadVocabulary(engine);
  expect(await engine.rows("select (select count(*) from position_list) as positions, (select count(*) from coverage) as rows"))
    .toEqual([{ positions: positions.length, rows: coverage.length }]);
  const optional = positions.filter(({ qty_min }) => qty_min === 0).map(({ position }) => position).sort();
  expect((await engine.columns("select position from position_list where optional order by position")).position).toEqual(optional);
  expect((await engine.columns("select distinct not_tier from coverage order by not_tier nulls first")).not_tier)
    .toEqual([null, ...new Set(coverage.flatMap(({ tier_not }) => tier_not ?? []))].sort((a, b) => Number(a !== null) - Number(b !== null)));
});

test("the order of the list is kept: positions come as they come off the reel", async () => {
  const engine = await openEngine();
  await loadVocabulary(engine);
  expect((await engine.columns("select position from position_list order by rowid")).position).toEqual(positions.map(({ position }) => position));
});
