-- How often had the same part of the same reel failed again soon after it was put right, and what did that cost?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date, group_code varchar,
--   position varchar, within_days integer
-- Columns: position varchar, position_name varchar, maker varchar, model varchar, failures bigint, back bigint, minutes double, parts double
with ends as (
  select max(received_on) as last_day
  from visits
), shared as (
  select visit, count(*) as on_ticket
  from inspected
  where failed
  group by visit
), used as (
  select f.ticket_no, f.position, sum(f.minutes) as minutes,
    sum(coalesce(f.qty, 1) * coalesce(f.unit_cost, c.unit_cost, 0)) filter (f.action in ('replaced', 'wanted')) as parts
  from findings f
  left join parts c using (part_no)
  where not coalesce(f.routine, false)
  group by f.ticket_no, f.position
), failures as (
  select i.position, v.maker, v.model, v.reel_kind, v.water, v.received_on, coalesce(v.finished_on, v.received_on) as done_on, v.came_in,
    coalesce(u.minutes, case when v.opening = 'complaint' then v.labour_min / s.on_ticket end, 0) as minutes, coalesce(u.parts, 0) as parts,
    lead(v.received_on) over reel as next_on, lead(v.came_in) over reel as next_came_in,
    lead(coalesce(u.minutes, case when v.opening = 'complaint' then v.labour_min / s.on_ticket end, 0)) over reel as next_minutes,
    lead(coalesce(u.parts, 0)) over reel as next_parts
  from inspected i
  join visits v using (visit)
  join shared s using (visit)
  left join used u on u.ticket_no = v.ticket_no and u.position = i.position
  where i.failed and v.serial is not null and v.finished
  window reel as (partition by i.position, v.maker, v.model, v.serial order by v.received_on, v.visit)
), told as (
  select f.*, coalesce(next_on - done_on <= getvariable('within_days') and coalesce(next_came_in, '?') not in ('accident', 'immersion'), false) as back
  from failures f
  cross join ends e
  where f.done_on + getvariable('within_days')::integer <= e.last_day
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
