-- Which waiting findings are not new: known, or to fix because their ticket is missing or contradicts one we have.
insert into staging.findings_fate
with tickets as (
  select ticket_no
  from ledger.tickets
  union all
  select w.ticket_no
  from staging.tickets w
  anti join staging.tickets_fate f using (file_no, source_line)
), contradicting as (
  select file_no, ticket_no, min(other_file) as other_file, min(other_line) as other_line
  from staging.tickets_fate
  where fate = 'to fix'
  group by file_no, ticket_no
), judged as (
  select w.row_key, w.file_no, w.source_line, w.source_file, w.ticket_no,
    case when c.ticket_no is not null then 'contradicts' when t.ticket_no is null then 'no ticket' end as why,
    c.other_file, c.other_line
  from staging.findings w
  left join tickets t on t.ticket_no = w.ticket_no
  left join contradicting c on c.ticket_no = w.ticket_no and c.file_no = w.file_no
), first_file as (
  -- Inside one file no two keys are equal.
  select row_key, arg_min(file_no, source_file) as file_no
  from judged
  where why is null and (select min(file_no) < max(file_no) from staging.findings)
  group by row_key
)
select j.file_no, j.source_line, if(j.why is null, 'known', 'to fix') as fate, j.ticket_no, j.why, j.other_file, j.other_line
from judged j
left join first_file f on f.row_key = j.row_key
left join ledger.findings kept on kept.row_key = j.row_key
where j.why is not null or kept.row_key is not null or f.file_no <> j.file_no;
