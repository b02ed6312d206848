-- How did parts of one size (or number) and supplier fare in each shop that were fitted there and looked at again?
-- Parameters: size_or_part varchar, supplier varchar
-- Columns: shop varchar, size_or_part varchar, supplier varchar, month integer, position varchar, maker varchar, model varchar, technician varchar,
--   fished integer, soon boolean, failed boolean, fitted bigint
select shop, size_or_part, supplier, month, position, maker, model, null::varchar as technician, fished, soon, failed, fitted
from kept.refitted r
where size_or_part = getvariable('size_or_part') and supplier is not distinct from getvariable('supplier')
-- In the order of one shop's own rows: the same shufflings then give one shop the same answer here.
order by month, position, maker nulls last, model, r.technician nulls last, fished, soon, failed, shop
