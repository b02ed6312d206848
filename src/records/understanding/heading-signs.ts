import type { SheetKind } from "./answers.ts";

/** What headings a meaning is known by, in the form of `plainHeading`. */
export interface HeadingSign {
  readonly means: string;
  /** Says it. */
  readonly strong: RegExp;
  /** May mean it, when the values fit. */
  readonly weak?: RegExp;
}

const JOBS: readonly HeadingSign[] = [
  { means: "ticket_no", strong: /^(?:ticket|tkt|job|repair|order|card|docket|slip)(?: (?:no|number|nr|id|card))?$|^(?:no|nr)$/, weak: /\b(?:ticket|job no|ref|id|number)\b/ },
  { means: "received_on", strong: /^(?:date in|received(?: on)?|recd|date|day|in|intake(?: date)?|timestamp|came(?: in)?|date received|booked in|taken in|arrived)$/, weak: /\b(?:in|received|intake|start|date|stamp)\b/ },
  { means: "finished_on", strong: /^(?:date out|out|finished(?: on)?|date done|went|completed(?: on)?|date finished|ready on|collected on|done)$/, weak: /\b(?:out|finished|completed|collected|end)\b/ },
  { means: "reel", strong: /^(?:reel|reel make model|make model|make and model|reel name|which reel|maker model|reel model)$/, weak: /\breel\b/ },
  { means: "maker", strong: /^(?:maker|make|brand|manufacturer)$/ },
  { means: "model", strong: /^(?:model|model name|reel model)$/ },
  { means: "reel_kind", strong: /^(?:type|typ|kind|reel (?:type|kind)|sort|kind of reel|style)$/ },
  { means: "serial", strong: /^(?:serial(?: (?:no|number))?|ser|s n|sn|tag|owner s tag)$/, weak: /\b(?:serial|tag)\b/ },
  { means: "water", strong: /^(?:water(?: type)?|wtr|fished in|where do you fish|used in)$/, weak: /\b(?:water|fish|fished|where)\b/ },
  { means: "salt_flag", strong: /^(?:salt|saltwater|salt water|sea|salty)$/, weak: /\b(?:salt|sea)\b/ },
  { means: "salt_days", strong: /^(?:salt days|sea days|days in salt|exposure days|days at sea|salt water days)$/, weak: /\b(?:salt|sea)\b/ },
  { means: "use_days", strong: /^(?:use days|days used|days fished|trips|days in use|outings)$/, weak: /\b(?:trips|outings|days|times used)\b/ },
  { means: "months_since_service", strong: /^(?:months|months since(?: last)? service)$/, weak: /\bmonths\b/ },
  { means: "rinse", strong: /^(?:rinse|rinsed|rinses|do you rinse|washed)$/, weak: /\brins/ },
  { means: "came_in", strong: /^(?:came in|why it came in|reason in|reason)$/ },
  { means: "job", strong: /^(?:job type|job kind|kind of job|type of job|job|service type|service)$/, weak: /\bservice\b/ },
  { means: "complaint", strong: /^(?:complaint|fault|problem|trouble|customer says|symptoms?|what s wrong|issue|cmpl ?\d?|complaint ?\d?)$/, weak: /\b(?:wrong|fault|problem|complain|symptom|issue)/ },
  { means: "work_text", strong: /^(?:work done|work|what was done|done|action taken|repair|job done|what|what we did)$/, weak: /\b(?:work|did|done|repair)\b/ },
  { means: "parts_text", strong: /^(?:parts(?: (?:used|fitted|replaced))?|fitted|replaced|spares|new parts|tech replaced)$/, weak: /\b(?:parts|fitted|replaced|spares)\b/ },
  { means: "checked_text", strong: /^(?:checked|inspected|tech checked|looked at)$/, weak: /\b(?:checked|inspected)\b/ },
  { means: "technician", strong: /^(?:tech|technician|hand|done by|by|who|bench|initials)$/ },
  { means: "batch", strong: /^(?:batch|club|charter|group)$/ },
  { means: "labour_hours", strong: /^(?:hrs|hours|hours worked|labou?r (?:hours|hrs)|bench hours)$/, weak: /\bho?u?rs\b/ },
  { means: "labour_min", strong: /^(?:labour min|mins|min|minutes|labou?r min(?:ute)?s?|bench minutes)$/, weak: /\bmin(?:ute)?s?\b/ },
  { means: "labour_time", strong: /^(?:time|t|tech time|bench time|time taken|labou?r time|dauer)$/, weak: /\btime\b/ },
  { means: "parts_wait_days", strong: /^(?:parts wait(?: days)?|wait days|days waited)$/ },
  { means: "warranty", strong: /^(?:warranty|wty|guarantee|warr)$/ },
  { means: "outcome", strong: /^(?:outcome|status|state|result)$/ },
  { means: "labour_charge", strong: /^(?:labou?r(?: (?:charge|cost|cu|price))?|work (?:cu|charge|cost|price))$/, weak: /\b(?:labou?r|work)\b.*\b(?:cu|cost|price|charge)\b|^labou?r\b/ },
  { means: "parts_charge", strong: /^parts(?: (?:charge|cost|cu|price|total))?$/, weak: /^parts\b/ },
  { means: "note", strong: /^(?:notes?|remarks?|comments?|memo)$/, weak: /\b(?:note|remark|comment)/ },
  { means: "customer", strong: /^(?:customer|client|name|your name|customer name|owner|phone|tel|telephone|mobile|e ?mail|address)$/, weak: /\b(?:customer|client|name|phone|mobile|mail|address)\b/ },
];

const TILL: readonly HeadingSign[] = [
  { means: "document", strong: /^(?:doc(?:ument)? no|invoice(?: no)?|receipt(?: no)?|bill(?: no)?|sale(?: no)?|order id)$/ },
  { means: "received_on", strong: /^(?:doc(?:ument)? date|date|invoice date|sale date|sold on)$/ },
  { means: "part_no", strong: /^(?:sku|item(?: (?:no|code))?|article|part no|code|product code)$/ },
  { means: "description", strong: /^(?:description|item name|text|product|name)$/ },
  { means: "qty", strong: /^(?:qty|quantity|pcs|pieces|units)$/ },
  { means: "net", strong: /^(?:net|amount|line total|total|net amount)$/ },
  { means: "ticket_no", strong: /^(?:ref|reference|ticket|job|ticket no|job no|your ref)$/ },
  { means: "technician", strong: /^(?:cashier|served by|user|till user)$/ },
];

const STOCK: readonly HeadingSign[] = [
  { means: "part_no", strong: /^(?:part no|part number|sku|catalogue (?:no|number)|item (?:no|code)|article no)$/ },
  { means: "name", strong: /^(?:part|name|item|description|part name|article)$/ },
  { means: "size_or_model", strong: /^(?:size for|size|for|size model|fits|dimensions?|spec)$/ },
  { means: "supplier", strong: /^(?:supplier|vendor|from|source)$/ },
  { means: "pack_qty", strong: /^(?:pack|pack (?:size|qty)|per pack|pk)$/ },
  { means: "unit_cost", strong: /^(?:price|cost|unit price|unit cost|each|price each)$/ },
  { means: "on_hand", strong: /^(?:in stock|stock|on hand|qty|quantity|on the shelf|shelf)$/ },
  { means: "on_order", strong: /^(?:on order|ordered|o o|under way)$/ },
  { means: "due_on", strong: /^(?:eta|due|due (?:on|date)|expected)$/ },
  { means: "lead_days", strong: /^(?:lead(?: (?:time|days|time days))?)$/ },
  { means: "min_order_qty", strong: /^(?:moq|min(?:imum)? order(?: qty)?)$/ },
  { means: "material", strong: /^material$/ },
  { means: "family", strong: /^(?:family|category|group)$/ },
];

export const HEADINGS: Readonly<Partial<Record<SheetKind, readonly HeadingSign[]>>> = { jobs: JOBS, till: TILL, stock: STOCK };

/** True for a heading that any kind of sheet is known by. */
export function isSign(plain: string): boolean {
  return plain !== "" && [JOBS, TILL, STOCK].some((signs) => signs.some(({ strong }) => strong.test(plain)));
}

/**
 * Which kind of sheet the headings speak of; null when they speak of none.
 *
 * @param plain headings in the form of `plainHeading`
 */
export function kindBySigns(plain: readonly string[]): SheetKind | null {
  const has = (kind: readonly HeadingSign[], ...means: string[]) => means.every((one) => kind.some((sign) => sign.means === one && plain.some((heading) => sign.strong.test(heading))));
  if (has(TILL, "document", "description") || (has(TILL, "document") && has(TILL, "part_no"))) return "till";
  const job = has(JOBS, "received_on") || has(JOBS, "ticket_no"), reel = has(JOBS, "reel") || has(JOBS, "model");
  if (!reel && has(STOCK, "name") && (has(STOCK, "on_hand") || has(STOCK, "unit_cost") || has(STOCK, "pack_qty"))) return "stock";
  return job || reel ? "jobs" : null;
}
