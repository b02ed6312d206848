import { position, positionSpellings } from "../../src/records/vocabulary.ts";
import { admittedRinse, guessedDays, writtenDay, writtenReel, writtenTime, writtenWater } from "./flat-dirt.ts";
import type { Draws } from "./random.ts";
import type { Row } from "./rows.ts";
import { spoken, typo } from "./words.ts";
import type { Written } from "./writing.ts";

/** Headings of the shop's own, as its sheet has them. */
export const FLAT_COLUMNS = ["Job", "Came", "Went", "Reel", "Sort", "Fished in", "Sea days", "Rinses", "Trouble", "Done", "Fitted", "Time", "Hand",
  "Work cu", "Parts cu", "Tag"] as const;

const SORT = { S: ["spin", "Spinning"], C: ["multi", "overhead"], B: ["casting", "baitcaster"], F: ["fly"] } as const;
/** How often a finding gets onto the sheet: fine ones were already thinned when the findings were written. */
const GRADE_2_WRITTEN = 0.4, FAILED_WRITTEN = 0.97, MODE_NAMED = 0.62, ONE_CELL = 0.31;

function partWords(code: string, junior: boolean, draw: Draws): string {
  const known = positionSpellings.filter((row) => row.position === code);
  const words = known.length > 0 && draw.chance(0.35) ? draw.pick(known).spelling : spoken(code, junior);
  return draw.chance(0.04) ? typo(words, draw) : words;
}

interface Line { changed: boolean; words: string; lot: string }

/** The findings that made it onto the sheet, each in the bench's words; tins of grease never do. */
function lines(findings: readonly Row[], junior: boolean, draw: Draws): Line[] {
  const told = findings.filter((row) => {
    if (position(String(row["position"])).group === "CN") return false;
    const grade = Number(row["grade"]), changed = row["action"] === "replaced" || row["action"] === "wanted";
    return grade >= 3 ? draw.chance(FAILED_WRITTEN) : grade === 2 && !changed ? draw.chance(GRADE_2_WRITTEN) : true;
  });
  return told.map((row) => {
    const action = String(row["action"]), qty = Number(row["qty"] ?? 1), changed = action === "replaced" || action === "wanted";
    const mode = row["mode"] && Number(row["grade"]) >= 3 && draw.chance(MODE_NAMED) ? ` ${String(row["mode"])}` : "";
    const end = action === "wanted" ? " needed, none in stock" : changed ? (qty > 1 ? ` x${qty}` : "") : action === "left" ? " ok" : ` ${action}`;
    return { changed, words: `${partWords(String(row["position"]), junior, draw)}${mode}${end}`, lot: row["note"] ? `(${String(row["note"])})` : "" };
  });
}

function sheetRow({ visit, ticket, findings }: Written, draw: Draws): Row {
  const { reel } = visit, { model } = reel.plan, said = lines(findings, visit.technician === "T2", draw);
  const fitted = said.filter((line) => line.changed).map((line) => `${line.words}${line.lot}`), rest = said.filter((line) => !line.changed).map((line) => line.words);
  const one_cell = draw.chance(ONE_CELL), cell = one_cell ? fitted.join(draw.pick([", ", " + ", "; ", " / "])) : fitted[0] ?? "";
  const done = [ticket["job"] === "full service" ? draw.pick(["F/S", "svc", "full strip"]) : String(ticket["job"]), ...(one_cell ? [] : fitted.slice(1).map((words) => (words.includes(" needed,") ? words : draw.pick([`new ${words}`, `${words} repl`])))), ...rest];
  const labour = ticket["labour_charge"] ?? null, parts = ticket["parts_charge"] ?? null, swapped = labour !== null && parts !== null && draw.chance(0.015);
  const impossible = visit.finished !== null && draw.chance(0.007), typed_year = impossible && draw.chance(0.5);
  return {
    "Job": ticket["ticket_no"] ?? null, "Came": writtenDay(visit.received - (typed_year ? 3652 : 0)),
    "Went": visit.finished === null ? null : writtenDay(impossible && !typed_year ? visit.received - 9 : visit.finished),
    "Reel": writtenReel(model, draw), "Sort": draw.pick(SORT[model.kind]), "Fished in": writtenWater(reel.water, draw),
    "Sea days": guessedDays(visit.salt_days, draw), "Rinses": admittedRinse(reel.rinse, draw), "Trouble": ticket["complaint"] ?? null,
    "Done": done.join(". "), "Fitted": cell, "Time": writtenTime(visit.minutes, draw), "Hand": draw.chance(0.07) ? null : visit.technician,
    "Work cu": swapped && labour !== null && parts !== null ? Number(labour) + Number(parts) : labour, "Parts cu": swapped ? null : parts,
    "Tag": draw.chance(0.24) ? reel.serial : null,
  };
}

/** The workshop's one flat sheet, with a shop's usual dirt: misspelt names, guessed days, hours for minutes, rows keyed twice. */
export function flatSheet(tickets: readonly Written[], draw: Draws): Row[] {
  return tickets.flatMap((ticket) => {
    const row = sheetRow(ticket, draw);
    if (draw.chance(0.012)) return [row, { ...row }];
    return draw.chance(0.008) ? [row, { ...row, "Job": `${String(row["Job"])}a`, "Came": writtenDay(ticket.visit.received + 1) }] : [row];
  });
}
