import type { Engine } from "../../db/engine.ts";
import type { RecordsFilter } from "../filter.ts";
import { askWorker } from "../worker-work.ts";
import type { WorkMeans } from "../worker-work.ts";
import type { BenchRates } from "./bench-rates.ts";
import { labourPage } from "./labour-page.ts";
import type { DoLabour, LabourPage } from "./labour-page.ts";

const started = () => new Worker(new URL("./labour.worker.ts", import.meta.url), { type: "module", name: "labour" });
const inWorker: DoLabour = (records, means) => askWorker(started, records, means);

/** Everything that Labour shows, worked out in a worker of its own, so that the page stays awake; a cancel ends it at once. */
export const labourInWorker = (engine: Engine, filter: RecordsFilter, rates: BenchRates, means: WorkMeans): Promise<LabourPage> =>
  labourPage(engine, filter, rates, means, inWorker);
