-- For how long was each reel watched from the first look at a part, and at which ages had the part failed again?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date, group_code varchar,
--   position varchar, last_seen boolean
-- Columns: position varchar, maker varchar, model varchar, age_at_end integer, ages integer[], reels bigint
with ends as (
  select max(received_on) as last_day
  from visits
), looks as (
  select i.position, v.maker, v.model, v.serial, v.received_on, i.failed and coalesce(v.came_in, '?') not in ('accident', 'immersion') as failed,
    min(v.received_on) over (partition by i.position, v.maker, v.model, v.serial) as first_on
  from inspected i
  join visits v using (visit)
  left join position_list p on p.position = i.position
  where v.serial is not null
    and (i.counted or i.failed)
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or v.maker = getvariable('maker'))
    and (getvariable('model') is null or v.model = getvariable('model'))
    and (getvariable('water') is null or v.water = getvariable('water'))
    and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
    and (getvariable('position') is null or i.position = getvariable('position'))
    and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
), reels as (
  select position, maker, model, serial,
    (case when getvariable('last_seen') then max(received_on) else any_value(e.last_day) end - first_on)::integer as age_at_end,
    list((received_on - first_on)::integer order by received_on) filter (failed and received_on > first_on) as ages
  from looks
  cross join ends e
  group by position, maker, model, serial, first_on
)
select position, maker, model, age_at_end, coalesce(ages, []::integer[]) as ages, count(*) as reels
from reels
where age_at_end > 0
group by position, maker, model, age_at_end, coalesce(ages, []::integer[])
order by position, maker nulls last, model, age_at_end, ages
