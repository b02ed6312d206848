import findings from "../../../data/templates/findings.csv?url";
import fits from "../../../data/templates/fits.csv?url";
import models from "../../../data/templates/models.csv?url";
import orders from "../../../data/templates/orders.csv?url";
import parts from "../../../data/templates/parts.csv?url";
import suppliers from "../../../data/templates/suppliers.csv?url";
import tickets from "../../../data/templates/tickets.csv?url";

/** Empty tables to fill in, each with one invented row that shows the form. */
export const TEMPLATES: readonly { name: string; address: string; holds: string }[] = [
  { name: "tickets.csv", address: tickets, holds: "one row for each reel each time it comes in" },
  { name: "findings.csv", address: findings, holds: "what you found and did, part by part" },
  { name: "models.csv", address: models, holds: "the reels you service" },
  { name: "parts.csv", address: parts, holds: "your catalogue and what is on the shelf" },
  { name: "fits.csv", address: fits, holds: "which part sits where in which model" },
  { name: "suppliers.csv", address: suppliers, holds: "who sells to you, carriage and waiting days" },
  { name: "orders.csv", address: orders, holds: "what you ordered and when it came" },
];
