-- Which lots were written in any shop beside parts of one size (or number) and supplier fitted within some months, the most frequent first?
-- Parameters: size_or_part varchar, supplier varchar, from_date date, to_date date
-- Columns: lot varchar, parts bigint
select lot, count(*) as parts
from kept.carriers
where lot is not null and size_or_part = getvariable('size_or_part') and supplier is not distinct from getvariable('supplier')
  and fitted_on between getvariable('from_date') and getvariable('to_date')
group by lot
order by parts desc, lot
