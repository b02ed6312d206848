-- How often was each position inspected, and how often had it failed, on each model and over all models?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date,
--   opening varchar, denominator varchar, group_code varchar, position varchar
-- Columns: position varchar, position_name varchar, group_code varchar, group_name varchar, family varchar, all_models boolean,
--   maker varchar, model varchar, reel_kind varchar, inspected bigint, failed bigint, replaced bigint, replaced_routine bigint,
--   outside bigint, outside_failed bigint, reels bigint
with chosen as (
  select i.*, coalesce(p.name, i.position) as position_name, p.group_code, p.group_name, p.family, p.rowid as place,
    case when getvariable('denominator') = 'strict' then i.written else i.counted end as taken
  from inspections i
  left join position_list p on p.position = i.position
  where (getvariable('reel_kind') is null or i.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or i.maker = getvariable('maker'))
    and (getvariable('model') is null or i.model = getvariable('model'))
    and (getvariable('water') is null or i.water = getvariable('water'))
    and (getvariable('from_date') is null or i.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or i.received_on <= getvariable('to_date'))
    and (getvariable('opening') = '*' or i.opening = getvariable('opening'))
    and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
    and (getvariable('position') is null or i.position = getvariable('position'))
)
select position, any_value(position_name) as position_name, any_value(group_code) as group_code, any_value(group_name) as group_name,
  any_value(family) as family,
  grouping(model) = 1 as all_models,
  maker, model,
  case when grouping(model) = 0 then mode(reel_kind order by reel_kind) end as reel_kind,
  count(*) filter (taken) as inspected,
  count(*) filter (taken and failed) as failed,
  count(*) filter (taken and replaced and not routine) as replaced,
  count(*) filter (taken and routine) as replaced_routine,
  count(*) filter (written and not counted) as outside,
  count(*) filter (written and not counted and failed) as outside_failed,
  count(distinct case when taken then serial end) as reels
from chosen
group by grouping sets ((position), (position, maker, model))
having count(*) filter (taken) > 0 or count(*) filter (written and not counted) > 0
order by min(place) nulls last, position, all_models desc, maker nulls last, model
