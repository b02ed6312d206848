-- What does a part cost when it is replaced, and how many minutes more does a full service take for each failed part?
-- Columns: position varchar, criticality varchar, parts_cost double, minutes double
with parts_used as (
  select position, avg(unit_cost * coalesce(qty, 1)) as parts_cost, avg(minutes) as minutes
  from findings
  where action = 'replaced' and unit_cost is not null
  group by position
), services as (
  select v.visit, any_value(v.labour_min) as labour_min, count(*) filter (i.failed) as failed
  from visits v
  join inspected i using (visit)
  where v.job = 'full service' and v.labour_min is not null
  group by v.visit
), slope as (
  select if(count(*) >= 30, greatest(regr_slope(labour_min, failed), 0), null) as minutes
  from services
)
select p.position, p.criticality, u.parts_cost::double as parts_cost, coalesce(u.minutes, s.minutes)::double as minutes
from position_list p
left join parts_used u using (position)
cross join slope s
order by p.position
