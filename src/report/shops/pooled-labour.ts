import { labourOfShops } from "../../answers/labour/usual-shop.ts";
import type { JobsAlike, LabourOfShops } from "../../answers/labour/usual-shop.ts";
import type { Engine } from "../../db/engine.ts";
import { labourTable } from "../labour-table.ts";
import type { ReportTable } from "../table.ts";
import jobsSql from "./pooled-jobs.sql?raw";
import minutesSql from "./pooled-minutes.sql?raw";

/** Bench minutes at the usual shop's pace, by job and kind of reel, one after the other. */
export async function pooledLabour(engine: Engine): Promise<ReportTable> {
  const rows: LabourOfShops[] = [];
  for (const { job, reel_kind } of await engine.rows<{ job: string | null; reel_kind: string | null }>(jobsSql)) {
    rows.push(...labourOfShops({ job, reel_kind }, await engine.rows<JobsAlike>(minutesSql, { job, reel_kind })));
  }
  return labourTable({ rows });
}
