-- How many jobs of one kind on one kind of reel took how many minutes, in each shop and on each model?
-- Parameters: job varchar, reel_kind varchar
-- Columns: shop varchar, maker varchar, model varchar, labour_min double, slip varchar, warranty boolean, in_batch boolean, jobs integer
select shop, maker, model, labour_min, slip, warranty, in_batch, jobs
from kept.minutes
where job is not distinct from getvariable('job') and reel_kind is not distinct from getvariable('reel_kind')
order by shop, maker nulls last, model, labour_min nulls last, slip nulls last, warranty, in_batch
