import { requireNode } from "./node-version.mjs";

requireNode();
const { ensureInstalled } = await import("./install.mjs");
const { chosenSteps, runStep, summary } = await import("./steps.mjs");
try {
  const steps = chosenSteps(process.argv.slice(2));
  ensureInstalled();
  const outcomes = [];
  for (const step of steps) outcomes.push(await runStep(step));
  process.exitCode = summary(outcomes);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  console.log("0 passed, 1 failed");
  process.exitCode = 1;
}
