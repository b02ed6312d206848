-- How often was each position inspected on each model, and how often had it failed?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date,
--   opening varchar, denominator varchar, group_code varchar, position varchar
-- Columns: position varchar, position_name varchar, group_code varchar, group_name varchar, family varchar,
--   maker varchar, model varchar, reel_kind varchar, inspected bigint, failed bigint, replaced bigint, replaced_routine bigint,
--   outside bigint, outside_failed bigint, reels bigint
with chosen as (
  select *, case when getvariable('denominator') = 'strict' then written else counted end as taken
  from inspections
  where (getvariable('reel_kind') is null or reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or maker = getvariable('maker'))
    and (getvariable('model') is null or model = getvariable('model'))
    and (getvariable('water') is null or water = getvariable('water'))
    and (getvariable('from_date') is null or received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or received_on <= getvariable('to_date'))
    and (getvariable('opening') = '*' or opening = getvariable('opening'))
    and (getvariable('position') is null or position = getvariable('position'))
), counts as (
  select position, maker, model, max(reel_kind) as reel_kind,
    count(*) filter (taken) as inspected,
    count(*) filter (taken and failed) as failed,
    count(*) filter (taken and replaced and not routine) as replaced,
    count(*) filter (taken and routine) as replaced_routine,
    count(*) filter (written and not counted) as outside,
    count(*) filter (written and not counted and failed) as outside_failed,
    count(distinct case when taken then serial end) as reels
  from chosen
  group by position, maker, model
)
select c.position, coalesce(p.name, c.position) as position_name, p.group_code, p.group_name, p.family,
  c.* exclude (position)
from counts c
left join position_list p on p.position = c.position
where (c.inspected > 0 or c.outside > 0)
  and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
order by p.rowid nulls last, c.position, c.maker nulls last, c.model
