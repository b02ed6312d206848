-- Which part numbers were used or wanted in each interchange group?
-- Parameters:
-- Columns: interchange varchar, part_no varchar
select distinct interchange, part_no
from group_demand
where part_no is not null
order by interchange, part_no
