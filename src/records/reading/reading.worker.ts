import { readFile } from "./read-file.ts";
import { answerReading } from "./reading-messages.ts";

answerReading(self as unknown as DedicatedWorkerGlobalScope, readFile);
