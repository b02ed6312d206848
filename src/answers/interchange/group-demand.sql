-- Parts used or wanted, by day, under the name of their interchange group; null where neither a number nor the fits tell which.
create or replace view group_demand as
with of_fits as (
  select f.maker, f.model, f.position, min(coalesce(g.interchange, f.part_no)) as interchange
  from fits f
  left join interchange g on g.part_no = f.part_no
  where f.part_no is not null and coalesce(f.qty, 1) > 0
  group by f.maker, f.model, f.position
  having count(distinct coalesce(g.interchange, f.part_no)) = 1
)
select coalesce(g.interchange, d.part_no, o.interchange) as interchange, d.*
from demand d
left join interchange g on g.part_no = d.part_no
left join of_fits o
  on d.part_no is null and o.model = d.model and o.maker is not distinct from d.maker and o.position = d.position
