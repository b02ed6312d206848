import { openAsBlob } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { prepareSchema } from "../../src/db/prepare.ts";
import { importFiles } from "../../src/records/importing.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";
import { MERGED_BY_ITSELF } from "../../src/records/merging/decisions.ts";
import type { Question } from "../../src/records/understanding/understanding.ts";
import { understood } from "../records/understanding/shape.ts";
import { DEMO, openDemo } from "./demo-shop.ts";

/** The demo's dirty sheet beside its clean tables, with its questions answered rightly and its lists of reels and of what fits them. */
let clean: Engine, dirty: Engine, questions: readonly Question[];
const file = async (name: string) => ({ name, blob: await openAsBlob(join(DEMO, name)) });
beforeAll(async () => {
  clean = await openDemo();
  dirty = await openNodeEngine();
  await prepareSchema(dirty);
  await loadVocabulary(dirty);
  const ledger = openMemoryLedger(), sheet = await file("flat/workshop-sheet.csv"), seen = await understood(sheet, { routine: "as routine" }, { today: "2026-01-05" });
  questions = seen.questions;
  await ledger.keepSetting(MERGED_BY_ITSELF, "a guess");
  const files = [await file("models.csv"), await file("fits.csv"), sheet];
  await importFiles(files, { engine: dirty, ledger, today: "2026-01-05", origin: "files", answers: new Map([[sheet.name, seen.answers]]) });
  await prepareAnswers(dirty);
}, 300_000);
afterAll(async () => { await clean.close(); await dirty.close(); });

interface Row { place: string; changed: number; failed: number; routine: number; pieces: number; looked: number; optional: boolean }
/** What was changed at each place; “spool brg” names no side, so the two sides and the pair count together. */
const ROWS = `-- Counts.
-- Columns: place varchar, changed bigint, failed bigint, routine bigint, pieces bigint, looked bigint, optional boolean
with places as (select position, if(starts_with(position, 'spool_bearing'), 'spool bearings', position) as place, optional from position_list where group_code <> 'CN'),
  done as (
    select p.place, count(*) as changed, count(*) filter (not coalesce(f.routine, false)) as failed, count(*) filter (f.routine) as routine, sum(coalesce(f.qty, 1)) as pieces
    from findings f join visits v using (ticket_no) join places p on p.position = f.position where f.action in ('replaced', 'wanted') group by all),
  seen as (select p.place, count(*) filter (i.counted) as looked, bool_or(p.optional) as optional from inspections i join places p on p.position = i.position group by all)
select place, coalesce(changed, 0) as changed, coalesce(failed, 0) as failed, coalesce(routine, 0) as routine, coalesce(pieces, 0)::bigint as pieces, looked, optional
from seen left join done using (place) order by place`;
const rows = async () => {
  const [told, found] = [await clean.rows<Row>(ROWS), new Map((await dirty.rows<Row>(ROWS)).map((row) => [row.place, row]))], none = { changed: 0, failed: 0, routine: 0, pieces: 0, looked: 0 };
  return told.filter(({ changed, looked }) => changed + looked > 0).map((row) => ({ ...row, read: found.get(row.place) ?? none }));
};

// Rates of the dirt: trade brief, section 5.8; misspelt words and words of the list of names: data/demo-shop/flat-sheet.ts.
const NOT_WRITTEN = 0.03, MISSPELT = 0.04, LISTED_NAMES = 0.35, NAMED = 0.62, NO_DAY = 0.007, NO_SIZE = 0.06;
/** Names on the list that tell no place: “snapped screw”, “seized screw”, “stripped screw” of 8; “handle brg” of 12. */
const NO_PLACE = new Map([["side_cover_screws", 3 / 8], ["main_bearing_handle", 1 / 12]]);
/** “Springs” without a number are the two that a reel has; the demo's shelf counts the set as one. Three of five names are plural. */
const PLURAL = new Map([["clutch_springs", (LISTED_NAMES * 3) / 5]]);
/** A word too many or too few of a hundred is a reading that went wrong. */
const MISREAD = 0.02;
const lost = (place: string) => NOT_WRITTEN + MISSPELT + LISTED_NAMES * (NO_PLACE.get(place) ?? 0);
/** How far a count of `n` lies from its share by chance at most: four standard deviations, and one for the smallest. */
const chance = (n: number, share: number) => 4 * Math.sqrt(n * share * (1 - share)) + 1;
const least = (n: number, share: number) => n * (1 - share) - chance(n, share), most = (n: number) => n + chance(n, MISREAD);

test("asks of two seals whether they are changed as routine, and of mixed waters, and nothing else", () => {
  expect(questions.map(({ about, position, best }) => [about, position ?? null, best])).toEqual([
    ["water", null, "left empty"], ["routine", "line_roller_seal", "as routine"], ["routine", "drag_knob_seal", "as routine"],
  ]);
});
test("parts changed, place by place, lack at most what was not written, misspelt or told without a place", async () => {
  const all = await rows();
  expect(all.filter(({ changed }) => changed > 0).length).toBeGreaterThan(35);
  expect(all.filter(({ place, changed, read }) => read.changed < least(changed, lost(place)) || read.changed > most(changed))).toEqual([]);
});
test("pieces, place by place, likewise", async () => {
  const within = ({ place, changed, pieces, read }: Row & { read: { pieces: number } }) => {
    const each = changed === 0 ? 1 : pieces / changed, plural = pieces * (PLURAL.get(place) ?? 0);
    return read.pieces >= pieces - (changed - least(changed, lost(place))) * each && read.pieces <= pieces + plural + (most(changed) - changed) * each;
  };
  expect((await rows()).filter((row) => !within(row))).toEqual([]);
});
test("failures, place by place: of seals changed as routine those whose fault is named (62 %), of all others also what was changed early without saying so", async () => {
  const asked = new Set(questions.map(({ position }) => position));
  const beyond = (await rows()).filter(({ place, failed, routine, read }) => {
    const bad = asked.has(place) ? failed : failed + routine, missed = asked.has(place) ? 1 - NAMED * (1 - lost(place)) : lost(place);
    return read.failed < least(bad, missed) || read.failed > most(bad);
  });
  expect(beyond).toEqual([]);
});
test("looks at parts lack those whose day cannot be (0.7 %), and where not every reel has the part, those of a reel without its size (6 %)", async () => {
  const beyond = (await rows()).filter(({ looked, optional, read }) => read.looked < least(looked, NO_DAY + (optional ? NO_SIZE : 0)) || read.looked > most(looked));
  expect(beyond).toEqual([]);
});
