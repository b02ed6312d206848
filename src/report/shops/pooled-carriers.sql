-- How many parts of one size (or number) and supplier, fitted within some months in any shop, are still carried, by how many reels?
-- Parameters: size_or_part varchar, supplier varchar, from_date date, to_date date
-- Columns: still_carried bigint, reels bigint
select count(*) as still_carried, count(distinct (shop, model, serial)) as reels
from kept.carriers
where carried and size_or_part = getvariable('size_or_part') and supplier is not distinct from getvariable('supplier')
  and fitted_on between getvariable('from_date') and getvariable('to_date')
order by still_carried
