-- Which part numbers were used or wanted in each interchange group?
-- Parameters:
-- Columns: interchange varchar, part_no varchar
select distinct coalesce(g.interchange, d.part_no) as interchange, d.part_no
from demand d
left join interchange g on g.part_no = d.part_no
where d.part_no is not null
order by interchange, d.part_no
