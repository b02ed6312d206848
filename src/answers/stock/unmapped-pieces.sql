-- How many pieces were used or wanted without a part number that can be told?
-- Parameters: from_date date, to_date date
-- Columns: pieces bigint
select coalesce(sum(qty), 0)::bigint as pieces
from group_demand
where interchange is null and day between getvariable('from_date') and getvariable('to_date')
order by pieces
