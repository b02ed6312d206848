-- What is each interchange group of the catalogue called?
-- Parameters:
-- Columns: interchange varchar, name varchar
select coalesce(g.interchange, p.part_no) as interchange, min(p.name) as name
from parts p
left join interchange g on g.part_no = p.part_no
group by coalesce(g.interchange, p.part_no)
having min(p.name) is not null
order by interchange
