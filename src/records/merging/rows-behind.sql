-- Every imported row behind one ticket: which file and line of which import it came from, and whether it counts.
-- Parameters: ticket_no varchar
-- Columns: kind varchar, position varchar, import_no integer, source_file varchar, source_line integer, counts boolean
with written as (
  select written
  from several
  where ticket_no = getvariable('ticket_no') or starts_with(getvariable('ticket_no'), ticket_no || ' (')
  union
  select getvariable('ticket_no')
), counting as (
  select 'finding' as kind, import_no, source_file, source_line, row_key
  from findings
  where ticket_no = getvariable('ticket_no')
), tickets_behind as (
  select t.import_no, t.source_file, t.source_line, v.nth is null or v.nth = 1 as counts, coalesce(v.ticket_no, t.ticket_no) as ticket_no
  from ledger.tickets t
  left join versions v on v.row_key = t.row_key and v.import_no = t.import_no and v.source_file = t.source_file and v.source_line = t.source_line
  where t.ticket_no in (select written from written)
)
select 'ticket' as kind, null as position, import_no, source_file, source_line, counts
from tickets_behind
where ticket_no = getvariable('ticket_no')
union all
select 'finding', f.position, f.import_no, f.source_file, f.source_line, c.row_key is not null
from ledger.findings f
left join counting c on c.row_key = f.row_key and c.import_no = f.import_no and c.source_file = f.source_file and c.source_line = f.source_line
where f.ticket_no in (select written from written)
order by kind desc, import_no, source_file, source_line, position;
