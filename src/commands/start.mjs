import { requireNode } from "./node-version.mjs";

requireNode();
const { start } = await import("./start-app.mjs");
await start();
