-- Which waiting models are not new: of rows with one key in one import the last counts, and it is new when it differs
-- from what is kept now.
insert into staging.models_fate
with kept as (
  select maker, model, row_key
  from ledger.models
  qualify row_number() over (partition by maker, model order by import_no desc, source_line desc) = 1
), in_order as (
  select maker, model, row_key, file_no, source_line, row_number() over same_key as nth, first_value(row_key) over same_key as last_key
  from staging.models
  window same_key as (partition by maker, model order by source_file desc, file_no desc, source_line desc)
)
select w.file_no, w.source_line, if(w.nth > 1 and w.row_key <> w.last_key, 'replaced', 'known') as fate
from in_order w
left join kept on kept.maker is not distinct from w.maker and kept.model is not distinct from w.model
where w.nth > 1 or kept.row_key = w.row_key;
