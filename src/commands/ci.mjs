/** Clean clone to verdict: every step of `npm test`, then the headless report on the demo shop. */
import { requireNode } from "./node-version.mjs";

requireNode();
const { ensureInstalled } = await import("./install.mjs");
const { runStep, STEPS, summary } = await import("./steps.mjs");
const { checkReport } = await import("./report-check.mjs");
try {
  ensureInstalled();
  const outcomes = [];
  for (const step of STEPS) outcomes.push(await runStep(step));
  outcomes.push(checkReport());
  process.exitCode = summary(outcomes);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  console.log("0 passed, 1 failed");
  process.exitCode = 1;
}
