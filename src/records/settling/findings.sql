-- What becomes of each waiting finding: new, known, or to fix because its ticket is missing or contradicts one we have.
create or replace table staging.findings as
with tickets as (
  select ticket_no
  from ledger.tickets
  union
  select ticket_no
  from staging.tickets
  where fate <> 'to fix'
), contradicting as (
  select file_no, ticket_no, min(other_file) as other_file, min(other_line) as other_line
  from staging.tickets
  where fate = 'to fix'
  group by file_no, ticket_no
), judged as (
  select w.* exclude (fate, why, other_file, other_line),
    case when c.ticket_no is not null then 'contradicts' when t.ticket_no is null then 'no ticket' end as why,
    c.other_file, c.other_line
  from staging.findings w
  left join tickets t on t.ticket_no = w.ticket_no
  left join contradicting c on c.ticket_no = w.ticket_no and c.file_no = w.file_no
), first_file as (
  select row_key, arg_min(file_no, source_file) as file_no
  from judged
  where why is null
  group by row_key
)
select j.*,
  case
    when j.why is not null then 'to fix'
    when kept.row_key is not null or f.file_no <> j.file_no then 'known'
    else 'new'
  end as fate
from judged j
left join first_file f on f.row_key = j.row_key
left join ledger.findings kept on kept.row_key = j.row_key;
