import { afterAll, beforeAll, expect, test } from "vitest";
import type { Engine } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { derive, prepareSchema, prepareTables } from "../../src/db/prepare.ts";

const COLUMNS = `-- Names and types of all columns.
-- Columns: table_name varchar, columns varchar
select table_name, string_agg(column_name || ' ' || data_type, ', ' order by column_name) as columns
from duckdb_columns()
where schema_name = 'main' and table_name in ('renumbered', 'several', 'versions', 'versions_judged', 'conflicts', 'settled_tickets', 'settled_findings', 'tickets', 'findings')
group by table_name
order by table_name`;

let engine: Engine;
beforeAll(async () => { engine = await openNodeEngine(); });
afterAll(() => engine.close());

test("the tables written down for ticket numbers that nobody bears twice are those that settling makes of nothing, column by column", async () => {
  await prepareSchema(engine);
  const worked_out = await engine.rows(COLUMNS);
  await prepareTables(engine);
  expect(await engine.rows(COLUMNS)).toEqual(worked_out);
  expect(worked_out).toHaveLength(9);
});

test("a derivation over them counts a ticket once, and settles one whose number comes twice", async () => {
  await prepareTables(engine);
  const ticket = (row_key: string, job: string, import_no: number) => `insert into ledger.tickets (ticket_no, received_on, model, job, row_key, import_no, source_file, source_line) values ('R-1', date '2024-03-01', 'Withy 5', '${job}', '${row_key}', ${import_no}, 't.csv', 2)`;
  const count = "-- Tickets that count.\n-- Columns: n bigint, job varchar\nselect count(*) as n, max(job) as job\nfrom tickets\norder by n";
  await engine.run([ticket("a", "drag", 1)]);
  await derive(engine);
  expect(await engine.rows(count)).toEqual([{ n: 1, job: "drag" }]);
  await engine.run([ticket("b", "bail", 2)]);
  await derive(engine);
  expect(await engine.rows(count)).toEqual([{ n: 1, job: "bail" }]);
});
