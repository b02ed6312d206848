-- How often had the same part of the same reel failed again soon after it was put right, and what did that cost?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date, group_code varchar,
--   position varchar, within_days integer
-- Columns: position varchar, position_name varchar, maker varchar, model varchar, failures bigint, back bigint, minutes double, parts double
with ends as (
  select max(received_on) as last_day
  from visits
), told as (
  select f.position, v.maker, v.model, v.reel_kind, v.water, v.received_on, n.minutes as next_minutes, n.parts as next_parts,
    coalesce(n.put_right_days <= getvariable('within_days'), false) as back
  from failures f
  join visits v using (visit)
  cross join ends e
  left join (select a.* from failures a join visits w using (visit) where w.finished) n on n.put_right = f.visit and n.place = f.place
  where v.serial is not null and v.finished
    and coalesce(v.finished_on, v.received_on) + getvariable('within_days')::integer <= e.last_day
)
select t.position, coalesce(any_value(p.name), t.position) as position_name, t.maker, t.model, count(*) as failures, count(*) filter (t.back) as back,
  coalesce(sum(t.next_minutes) filter (t.back), 0) as minutes, coalesce(sum(t.next_parts) filter (t.back), 0)::double as parts
from told t
left join position_list p on p.position = t.position
where (getvariable('reel_kind') is null or t.reel_kind = getvariable('reel_kind'))
  and (getvariable('maker') is null or t.maker = getvariable('maker'))
  and (getvariable('model') is null or t.model = getvariable('model'))
  and (getvariable('water') is null or t.water = getvariable('water'))
  and (getvariable('from_date') is null or t.received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or t.received_on <= getvariable('to_date'))
  and (getvariable('position') is null or t.position = getvariable('position'))
  and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
group by t.position, t.maker, t.model
order by t.position, t.maker nulls last, t.model
