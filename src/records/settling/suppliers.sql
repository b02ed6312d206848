-- Which waiting suppliers are not new: of rows with one key in one import the last counts, and it is new when it differs
-- from what is kept now.
insert into staging.suppliers_fate
with kept as (
  select supplier, row_key
  from ledger.suppliers
  qualify row_number() over (partition by supplier order by import_no desc, source_line desc) = 1
), in_order as (
  select supplier, row_key, file_no, source_line, row_number() over same_key as nth, first_value(row_key) over same_key as last_key
  from staging.suppliers
  window same_key as (partition by supplier order by source_file desc, file_no desc, source_line desc)
)
select w.file_no, w.source_line, if(w.nth > 1 and w.row_key <> w.last_key, 'replaced', 'known') as fate
from in_order w
left join kept on kept.supplier is not distinct from w.supplier
where w.nth > 1 or kept.row_key = w.row_key;
