-- Beside how many fitted parts of one size (or number) and supplier was a lot or batch written, over all shops, and when were they fitted?
-- Parameters: size_or_part varchar, supplier varchar
-- Columns: size_or_part varchar, supplier varchar, month integer, name varchar, count bigint
select size_or_part, supplier, month, name, sum(count)::bigint as count
from kept.names_written
where size_or_part = getvariable('size_or_part') and supplier is not distinct from getvariable('supplier')
group by size_or_part, supplier, month, name
order by month, name
