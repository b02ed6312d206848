-- What becomes of each waiting order line: new when it differs from what is kept now of the same line. One order may name a
-- part several times in one file: those are its first, second … line; across files and imports the newest of a line counts.
create or replace table staging.orders as
with kept as (
  select order_no, supplier, part_no, ordered_on, coalesce(line_no, 1) as line_no, row_key
  from ledger.orders
  qualify row_number() over (
    partition by order_no, supplier, part_no, ordered_on, coalesce(line_no, 1) order by import_no desc, source_line desc
  ) = 1
), numbered as (
  select * replace (row_number() over (partition by file_no, order_no, supplier, part_no, ordered_on order by source_line)::integer as line_no)
  from staging.orders
), in_order as (
  select *, row_number() over same_line as nth, first_value(row_key) over same_line as last_key
  from numbered
  window same_line as (partition by order_no, supplier, part_no, ordered_on, line_no order by source_file desc, file_no desc)
)
select w.* exclude (nth, last_key, fate),
  case when w.nth > 1 and w.row_key <> w.last_key then 'replaced' when w.nth > 1 or kept.row_key = w.row_key then 'known' else 'new' end as fate
from in_order w
left join kept on kept.order_no is not distinct from w.order_no
  and kept.supplier is not distinct from w.supplier
  and kept.part_no is not distinct from w.part_no
  and kept.ordered_on is not distinct from w.ordered_on
  and kept.line_no = w.line_no;
