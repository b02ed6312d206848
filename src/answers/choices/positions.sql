-- Which positions were inspected or written down?
-- Parameters:
-- Columns: position varchar, name varchar, group_code varchar, group_name varchar
select i.position, coalesce(p.name, i.position) as name, p.group_code, p.group_name
from (select distinct position from inspections) i
left join position_list p on p.position = i.position
order by p.rowid nulls last, i.position
