-- Rows that bear one ticket number and contradict each other: first the row that counts now, then the others, each with all it says.
-- Columns: read_as varchar, counts boolean, row_key varchar, import_no integer, source_file varchar, source_line integer, ticket_no varchar,
--   received_on date, finished_on date, maker varchar, model varchar, reel_kind varchar, serial varchar, water varchar,
--   salt_days double, use_days double, months_since_service double, rinse varchar, came_in varchar, job varchar, complaint
--   varchar, technician varchar, batch varchar, labour_min double, parts_wait_days double, warranty boolean, outcome
--   varchar, labour_charge double, parts_charge double, note varchar
with asked as (
  select distinct ticket_no, counts_key
  from conflicts
)
select v.ticket_no as read_as, v.row_key is not distinct from a.counts_key as counts, v.row_key, v.import_no, v.source_file, v.source_line, v.written as ticket_no,
  v.received_on, v.finished_on, v.maker, v.model, v.reel_kind, v.serial, v.water, v.salt_days, v.use_days,
  v.months_since_service, v.rinse, v.came_in, v.job, v.complaint, v.technician, v.batch, v.labour_min, v.parts_wait_days,
  v.warranty, v.outcome, v.labour_charge, v.parts_charge, v.note
from asked a
join versions_judged v on v.ticket_no = a.ticket_no
where v.nth = 1 or v.is_contradicted or exists (select 1 from conflicts c where c.ticket_no = v.ticket_no and c.row_key = v.row_key)
order by read_as, counts desc, v.import_no desc, v.source_file, v.source_line;
