import fc from "fast-check";
import type { Cells } from "./any-file.ts";

/** Cells by heading, as shops write them, good and bad. */
type Sheet = Readonly<Record<string, readonly string[]>>;

const DAYS = ["13/04/2025", "14/04/2025", "03/04/25", "5.4.25", "2025-04-04", "2025-11-02 19:14", "00/00/0000", "Tuesday", ""];
const REELS = ["Brackhelm Whinbeck 40", "Slipdene45", "Withy 5", "Ekholt 30 / spare spool", "Withy 5 and Fernhowe 7", "dont know, black one", ""];
const WORK = ["AR brg replaced, cleaned sleeve", "F/S. brg x2, bail sprg", "body seal pinched?? resealed", "2x spool brg gone. x3 reels", "as usual", "see notes", ""];
const MONEY = ["£38.00", "£52,00", "19", "1 240.50", "EUR 11,50", "free", ""];
const TIMES = ["55", "1h40", "1:40", ".75 ea", "1/2 hr", "2 1/4", "0,5+0,5", "999", "soon", ""];
const TICKETS = ["R-1041", "R-1042", "R-1O43", "1043a", "1053/1054", "r 1041", ""];

const SHEETS: readonly Sheet[] = [
  { Ticket: TICKETS, "Date In": DAYS, "Date Out": DAYS, Customer: ["H.", "Club (3 of 6)", ""], Reel: REELS, Type: ["spin", "Spinning", "?"], "Salt?": ["Y", "yes", "n", ""],
    Fault: ["handle slips back", "service", "water in", ""], "Work Done": [...WORK, "TOTAL APRIL"], Parts: ["ar brg, 4x7x2.5 x1", "see notes", "\"", ""], Mins: TIMES, Labour: MONEY },
  { date: ["14/3", "15/3", "4-3", "\"", "do", ""], "?": ["post", "B's boat", "\"", ""], reel: ["Dunvegg 20 star", "Piddock150 left", "Withy 5", "\"", "phone re bruskar - no", ""], what: [...WORK, "\""], t: [...TIMES, "\""] },
  { doc_no: ["INV-1", "INV-2", "CRN-1"], doc_date: ["2025-04-08", "2025-04-09", "?"], sku: ["LAB-FULL-S", "ARC-WB40", "BRG-4x7x2.5", "MISC"],
    description: ["Full service spinning (Whinbeck 40)", "Anti reverse clutch", "Bearing 4x7x2.5 SS", "parts", "refund - comeback R1038", "TOTAL"], qty: ["1", "2", "-1", "x"], net: ["52.00", "-52.00", "6.50", ""],
    ref: ["R1051", "R-1051", "1053/1054", ""] },
  { TKT: ["004417", "004418", ""], RECD: ["03/12/2024", "03/13/2024", "03/14/2024", "13/03/2024", "00/00/0000"], MAKE: ["OSTVARG", "BRACKHELM", ""], MODEL: ["EKHOLT 50", "DOVEKIN25", "EKHOLT 50", ""], TYP: ["SP", "FL", ""], WTR: ["S", "F", "B", "S+F"],
    HRS: ["1.20", "0", "0.4"], FIND1: ["DRAGWSHR/GLZD", "BAIL SPR/BRKN", "NFF", ""], ACT1: ["RPL", "CHK", ""], AMT: ["88.40", "0.00", "31"] },
  { Timestamp: DAYS, "Reel make & model": REELS, "Where do you fish?": ["Sea, from rocks", "lake + estuary", "River", ""], "Do you rinse?": ["always ;-)", "never", "no need", ""],
    "What's wrong?": ["Slips sometimes.\nAlso noisy", "Won't cast far", ""], "TECH - replaced": ["one-way bearing; roller brg", "nothing - cleaned", "-", ""], "TECH - time": TIMES, Status: ["ready", "waiting parts", "quote sent"] },
  { Part: ["line roller brg", "AR clutch", "-014 oring", "bail springs asst", "TOTAL", ""], "Size/for": ["4x7x2.5 / MR74", "Whinbeck", "12.4x1.8", ""], Supplier: ["FLI", "ZET", ""], Pack: ["10", "1", "a box", ""],
    Price: ["11.00 cu/pk", "2.4", "EUR 11,50", "various", ""], "In stock": ["3 pk + 8", "1 (+4 o/o)", "a bag", "9", ""], Min: ["2 pk", ""], Jan: ["14", "~40", ""], Feb: ["18", ""], ETA: ["jan?", "15/12", "late", ""] },
];

/** A cell of a list whose first three words are good ones. */
export const mostlyGood = (words: readonly string[]): fc.Arbitrary<string> =>
  fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...words.slice(0, 3)) }, { weight: 1, arbitrary: fc.constantFrom(...words) });

/** A list of jobs, sales or parts as shops keep them, perhaps with a title above. */
export const sheetKinds: fc.Arbitrary<Cells> = fc.constantFrom(...SHEETS).chain((sheet) => {
  const row = fc.tuple(...Object.values(sheet).map(mostlyGood));
  return fc.tuple(fc.array(row, { maxLength: 8 }), fc.constantFrom(0, 0, 1, 2)).map(([rows, above]) => ({
    rows: [...Array.from({ length: above }, (_, at) => [at === 0 ? "Repairs, our list" : ""]), Object.keys(sheet), ...rows], heading: above,
  }));
});
