-- What becomes of each waiting ticket: new, known, or to fix because its number is taken by other content.
create or replace table staging.tickets as
with in_order as (
  select *,
    row_number() over same_number as nth,
    first_value(row_key) over same_number as first_key,
    first_value(source_file) over same_number as first_file,
    first_value(source_line) over same_number as first_line
  from staging.tickets
  window same_number as (partition by ticket_no order by source_file, file_no, source_line)
)
select w.* exclude (nth, first_key, first_file, first_line, fate, other_file, other_line),
  case
    when kept.ticket_no is not null then if(kept.row_key = w.row_key, 'known', 'to fix')
    when w.nth = 1 then 'new'
    else if(w.row_key = w.first_key, 'known', 'to fix')
  end as fate,
  coalesce(kept.source_file, w.first_file) as other_file,
  coalesce(kept.source_line, w.first_line) as other_line
from in_order w
left join ledger.tickets kept on kept.ticket_no = w.ticket_no;
