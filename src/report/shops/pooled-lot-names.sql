-- Of which sizes (or parts) and suppliers was anything, in any shop, looked at again soon?
-- Parameters:
-- Columns: size_or_part varchar, supplier varchar
select size_or_part, supplier
from kept.refitted
where soon
group by size_or_part, supplier
order by size_or_part, supplier nulls last
