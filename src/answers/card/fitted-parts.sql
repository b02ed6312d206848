-- Which parts sit where on a model.
-- Parameters: maker varchar, model varchar
-- Columns: position varchar, part_no varchar, qty integer
select position, part_no, coalesce(qty, 1) as qty
from fits
where model = getvariable('model') and maker is not distinct from getvariable('maker') and part_no is not null and coalesce(qty, 1) > 0
order by position, part_no
