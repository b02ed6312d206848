import { startEarly } from "./db/engine-thread.ts";
import { guardScripts } from "./ui/own-scripts.ts";

guardScripts();
startEarly();
import("./open-app.ts").catch((error: unknown) => {
  document.body.textContent = "Saltbench could not be loaded. Load this page again.";
  throw error;
});
