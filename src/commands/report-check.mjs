import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { npm } from "./install.mjs";
import { ROOT } from "./root.mjs";
import { tell } from "./steps.mjs";

/** The files that a report promises so far, with the columns that begin each of them. */
const PROMISED = {
  "rejected.csv": "file,line,column,value,reason",
  "failure-rates.csv": "position,maker,model,came_in,denominator,inspected,failed,rate,rate_low,rate_high,pooled_rate,pooled_low,pooled_high,adjusted_ratio,adjusted_low,adjusted_high,p_value,q_value,verdict",
  "wear.csv": "position,clock,group,method,n,failed,shape,shape_se,scale,scale_low,scale_high,b10,b10_low,b10_high,log_likelihood,note",
  "wear-effects.csv": "position,term,coefficient,se,time_ratio,time_ratio_low,time_ratio_high",
  "wear-curve.csv": "position,exposure,fitted,fitted_low,fitted_high,observed,n",
  "recurrences.csv": "position,maker,model,age,at_risk,mean_cumulative,low,high",
  "lots.csv": "size_or_part,supplier,from,to,fitted,failed_early,share,expected_share,p_value,verdict",
  "restock.csv": "part_no,interchange,supplier,on_hand,on_order,demand_mean,demand_p95,reorder_point,order_up_to,order_qty,cost,reason",
  "stock-curve.csv": "spend,jobs_without_wait,lines_filled",
  "labour.csv": "job,reel_kind,maker,model,n,median,mean,mean_low,mean_high,p80,pooled_median,pooled_p80",
  "workload.csv": "week,tickets,tickets_p10,tickets_p90,bench_hours,bench_hours_p10,bench_hours_p90,method",
  "forecast-score.csv": "method,horizon_weeks,mase,pinball,coverage80",
  "advice-score.csv": "policy,jobs_without_wait,stock_value_mean,orders,spend",
};

/** @param {string} text */
const lines = (text) => text.replace(/^\uFEFF/, "").split(/\r?\n/).filter((line) => line !== "");

/**
 * What is wrong with one promised table; null when nothing is.
 *
 * @param {string} text
 * @param {string} columns
 * @param {{ may_be_empty?: boolean }} [how]
 */
export function tableTrouble(text, columns, { may_be_empty = false } = {}) {
  const [heading = "", ...rows] = lines(text);
  const missing = columns.split(",").filter((name) => !heading.split(",").includes(name));
  if (missing.length > 0) return `lacks the column ${missing.join(", ")}`;
  return rows.length === 0 && !may_be_empty ? "has no row" : null;
}

/**
 * @param {string} folder where the report was written
 * @returns {string[]} one sentence for each promise that is not kept
 */
export function reportTroubles(folder) {
  const tables = Object.entries(PROMISED).map(([name, columns]) => {
    const path = join(folder, name);
    const trouble = existsSync(path) ? tableTrouble(readFileSync(path, "utf8"), columns, { may_be_empty: name === "rejected.csv" }) : "is not there";
    return trouble === null ? null : `${name} ${trouble}`;
  });
  return [...tables, summaryTrouble(join(folder, "summary.json"))].filter((trouble) => trouble !== null);
}

/** @param {string} path */
function summaryTrouble(path) {
  if (!existsSync(path)) return "summary.json is not there";
  try {
    const summary = JSON.parse(readFileSync(path, "utf8"));
    return Object.keys(summary).length === 0 ? "summary.json is empty" : null;
  } catch (error) {
    if (error instanceof SyntaxError) return "summary.json is no JSON";
    throw error;
  }
}

/**
 * Runs the report on the demo shop as an owner would and checks what it promised: one check for the exit code and one
 * for each file.
 *
 * @returns {import("./steps.mjs").Outcome}
 */
export function checkReport() {
  const title = "Headless report on the demo shop";
  console.log(`\n=== ${title} ===`);
  const began = performance.now();
  const folder = mkdtempSync(join(tmpdir(), "saltbench-report-"));
  const [command, args] = npm(["run", "--silent", "report", "--", "data/demo", "--out", folder]);
  const { status } = spawnSync(command, args, { cwd: ROOT, stdio: ["ignore", "inherit", "inherit"] });
  const troubles = reportTroubles(folder);
  if (status !== 0) troubles.unshift(`the report ended with ${status}`);
  troubles.forEach((trouble) => console.error(trouble));
  rmSync(folder, { recursive: true });
  const checks = Object.keys(PROMISED).length + 2;
  return tell({ title, seconds: (performance.now() - began) / 1000, passed: checks - troubles.length, failed: troubles.length });
}
