-- At which positions were the parts of each interchange group used or wanted?
-- Parameters:
-- Columns: interchange varchar, position varchar
select distinct interchange, position
from group_demand
where interchange is not null and position is not null
order by interchange, position
