-- Which waiting fits are not new: of rows with one key in one import the last counts, and it is new when it differs
-- from what is kept now.
insert into staging.fits_fate
with kept as (
  select maker, model, position, part_no, row_key
  from ledger.fits
  qualify row_number() over (partition by maker, model, position, part_no order by import_no desc, source_line desc) = 1
), in_order as (
  select maker, model, position, part_no, row_key, file_no, source_line, row_number() over same_key as nth, first_value(row_key) over same_key as last_key
  from staging.fits
  window same_key as (partition by maker, model, position, part_no order by source_file desc, file_no desc, source_line desc)
)
select w.file_no, w.source_line, if(w.nth > 1 and w.row_key <> w.last_key, 'replaced', 'known') as fate
from in_order w
left join kept on kept.maker is not distinct from w.maker and kept.model is not distinct from w.model and kept.position is not distinct from w.position and kept.part_no is not distinct from w.part_no
where w.nth > 1 or kept.row_key = w.row_key;
