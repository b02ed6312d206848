import { modelName } from "../../answers/model-name.ts";
import { hashOf } from "../../ui/url-state.ts";

/** A ticket's way over the bench. */
export const STEPS = [
  { step: "in", title: "Take in" }, { step: "log", title: "At the bench" }, { step: "checks", title: "Checks" }, { step: "finish", title: "Finish" },
] as const;

export const stepLink = (ticket: string, step: string): string => hashOf({ slug: "bench", query: new URLSearchParams({ ticket, step }).toString() });

/** Where the reel card for this reel is, with what was said of it at the counter; only whole days and months are asked there. */
export function cardLink(text: (field: string) => string, known: boolean): string {
  const reel = known ? modelName({ maker: text("maker") || null, model: text("model") }) : text("reel_kind") === "" ? "" : `any ${text("reel_kind")}`;
  const whole = (field: string) => (/^\d{1,4}$/.test(text(field).trim()) ? text(field).trim() : "");
  const asked = { reel, fished: text("water"), rinse: text("rinse"), days: whole("salt_days"), months: whole("months_since_service"), said: text("complaint").slice(0, 200), job: text("job") };
  return hashOf({ slug: "card", query: new URLSearchParams(Object.entries(asked).filter(([, value]) => value !== "")).toString() });
}
