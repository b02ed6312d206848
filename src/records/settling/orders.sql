-- Which waiting order lines are not new: one is new when it differs from what is kept now of the same line. One order may name
-- a part several times in one file: those are its first, second … line; across files and imports the newest of a line counts.
create or replace table staging.orders as
select * replace (row_number() over (partition by file_no, order_no, supplier, part_no, ordered_on order by source_line)::integer as line_no)
from staging.orders;

insert into staging.orders_fate
with kept as (
  select order_no, supplier, part_no, ordered_on, coalesce(line_no, 1) as line_no, row_key
  from ledger.orders
  qualify row_number() over (
    partition by order_no, supplier, part_no, ordered_on, coalesce(line_no, 1) order by import_no desc, source_line desc
  ) = 1
), in_order as (
  select order_no, supplier, part_no, ordered_on, line_no, row_key, file_no, source_line,
    row_number() over same_line as nth,
    first_value(row_key) over same_line as last_key
  from staging.orders
  window same_line as (partition by order_no, supplier, part_no, ordered_on, line_no order by source_file desc, file_no desc)
)
select w.file_no, w.source_line, if(w.nth > 1 and w.row_key <> w.last_key, 'replaced', 'known') as fate
from in_order w
left join kept on kept.order_no is not distinct from w.order_no
  and kept.supplier is not distinct from w.supplier
  and kept.part_no is not distinct from w.part_no
  and kept.ordered_on is not distinct from w.ordered_on
  and kept.line_no = w.line_no
where w.nth > 1 or kept.row_key = w.row_key;
