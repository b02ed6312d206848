-- One row per ticket and position that had failed: its faults, what it cost, and after which visit it had been put right before.
create or replace table failures as
with shared as (
  select visit, count(*) as on_ticket
  from inspected
  where failed
  group by visit
), told as (
  select v.visit, f.position, list(distinct f.mode order by f.mode) filter (f.mode is not null) as modes,
    sum(f.minutes) filter (not coalesce(f.routine, false)) as minutes,
    sum(coalesce(f.qty, 1) * coalesce(f.unit_cost, c.unit_cost, 0)) filter (f.action in ('replaced', 'wanted') and not coalesce(f.routine, false)) as parts
  from findings f
  join visits v using (ticket_no)
  left join parts c using (part_no)
  group by v.visit, f.position
), in_order as (
  select i.visit, i.place, i.position, i.written, i.counted, t.modes,
    coalesce(t.minutes, case when v.opening = 'complaint' then v.labour_min / s.on_ticket end, 0)::double as minutes,
    coalesce(t.parts, 0)::double as parts, coalesce(v.parts_wait_days, 0)::double / s.on_ticket as waiting_days,
    v.serial is not null and coalesce(v.came_in, '?') not in ('accident', 'immersion') as may_come_back, v.received_on,
    last_value(case when v.finished then v.visit end ignore nulls) over so_far as put_right
  from inspected i
  join visits v using (visit)
  join shared s using (visit)
  left join told t on t.visit = i.visit and t.position = i.position
  where i.failed
  window so_far as (partition by i.place, v.maker, v.model, v.serial order by v.received_on, v.visit rows between unbounded preceding and 1 preceding)
)
-- New damage (an accident, a dunking) is no comeback, and without a serial no reel is known again.
select o.* exclude (may_come_back, received_on, put_right),
  case when o.may_come_back then o.put_right end as put_right,
  case when o.may_come_back then o.received_on - coalesce(b.finished_on, b.received_on) end as put_right_days
from in_order o
left join visits b on b.visit = o.put_right;
