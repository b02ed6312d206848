-- How often was each position inspected on each model, and how often had it failed?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date,
--   opening varchar, denominator varchar, group_code varchar, position varchar
-- Columns: position varchar, position_name varchar, group_code varchar, group_name varchar, family varchar,
--   maker varchar, model varchar, reel_kind varchar, inspected bigint, failed bigint, replaced bigint, replaced_routine bigint,
--   outside bigint, outside_failed bigint
with came as (
  -- Models by number: grouping millions of rows by their names takes three times as long.
  select visit, maker, model, reel_kind, dense_rank() over (order by maker, model)::integer as model_no
  from visits
  where (getvariable('reel_kind') is null or reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or maker = getvariable('maker'))
    and (getvariable('model') is null or model = getvariable('model'))
    and (getvariable('water') is null or water = getvariable('water'))
    and (getvariable('from_date') is null or received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or received_on <= getvariable('to_date'))
    and (getvariable('opening') = '*' or opening = getvariable('opening'))
), named as (
  select model_no, maker, model, max(reel_kind) as reel_kind
  from came
  group by model_no, maker, model
), counts as (
  select i.place, v.model_no,
    count(*) filter (i.taken) as inspected,
    count(*) filter (i.taken and i.failed) as failed,
    count(*) filter (i.taken and i.replaced and not i.routine) as replaced,
    count(*) filter (i.taken and i.routine) as replaced_routine,
    count(*) filter (i.written and not i.counted) as outside,
    count(*) filter (i.written and not i.counted and i.failed) as outside_failed
  from (select *, case when getvariable('denominator') = 'strict' then written else counted end as taken from inspected) i
  join came v using (visit)
  where getvariable('position') is null or i.position = getvariable('position')
  group by i.place, v.model_no
)
select n.position, coalesce(p.name, n.position) as position_name, p.group_code, p.group_name, p.family,
  m.maker, m.model, m.reel_kind, c.* exclude (place, model_no)
from counts c
join places n using (place)
join named m using (model_no)
left join position_list p on p.position = n.position
where (c.inspected > 0 or c.outside > 0)
  and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
order by c.place, m.maker nulls last, m.model
