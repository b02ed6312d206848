-- Which waiting findings are not new: known, or to fix because their ticket is missing. With another row of a ticket all its
-- findings come in, known or not, so that the row has what was written beside it.
insert into staging.findings_fate
with numbers as (
  select ticket_no
  from ledger.tickets
  union
  select ticket_no
  from staging.tickets
), lonely as (
  select distinct ticket_no
  from staging.findings
  anti join numbers using (ticket_no)
), missing as (
  select ticket_no
  from lonely
  where number_key(ticket_no) not in (select number_key(ticket_no) from numbers where exists (select 1 from lonely))
), judged as (
  select w.row_key, w.file_no, w.source_line, w.source_file, w.ticket_no, m.ticket_no is not null as lacks_ticket, a.row_key as version
  from staging.findings w
  left join missing m on m.ticket_no = w.ticket_no
  left join staging.numbers_again a on a.row_key = w.of_version and a.file_no = w.file_no
), first_file as (
  -- Inside one file no two keys are equal.
  select row_key, version, arg_min(file_no, source_file) as file_no
  from judged
  where not lacks_ticket and (select min(file_no) < max(file_no) from staging.findings)
  group by row_key, version
)
select j.file_no, j.source_line, j.row_key, if(j.lacks_ticket, 'to fix', 'known') as fate, j.ticket_no
from judged j
left join first_file f on f.row_key = j.row_key and f.version is not distinct from j.version
left join ledger.findings kept on kept.row_key = j.row_key and j.version is null
where j.lacks_ticket or kept.row_key is not null or f.file_no <> j.file_no;
