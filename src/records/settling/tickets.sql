-- Which waiting tickets are not new: known, or to fix because their number is taken by other content.
insert into staging.tickets_fate
with in_order as (
  select ticket_no, row_key, file_no, source_line,
    row_number() over same_number as nth,
    first_value(row_key) over same_number as first_key,
    first_value(source_file) over same_number as first_file,
    first_value(source_line) over same_number as first_line
  from staging.tickets
  window same_number as (partition by ticket_no order by source_file, file_no, source_line)
)
select w.file_no, w.source_line,
  if(w.row_key = coalesce(kept.row_key, w.first_key), 'known', 'to fix') as fate,
  w.ticket_no,
  coalesce(kept.source_file, w.first_file) as other_file,
  coalesce(kept.source_line, w.first_line) as other_line
from in_order w
left join ledger.tickets kept on kept.ticket_no = w.ticket_no
where kept.ticket_no is not null or w.nth > 1;
