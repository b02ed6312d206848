/** All that reads sheets which are not our own tables. It is large, notes and all, so it is fetched when such a sheet comes. */
export { rowMaker } from "../understanding/row-maker.ts";
export { withRoutineParts } from "../understanding/routine-parts.ts";
export { shapeKey } from "../understanding/shape-key.ts";
export { planSheet, readableSheet } from "../understanding/sheet-plan.ts";
export { SheetTaker } from "../understanding/sheet-taker.ts";
export { understoodRemarks } from "../understanding/understood-remarks.ts";
