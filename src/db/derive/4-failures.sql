-- One row per ticket and position that had failed: its faults, what it cost, and after which visit it had been put right before.
create or replace table failures as
with failed as (
  select i.visit, i.place, i.position, i.written, i.counted, v.ticket_no, v.opening, v.labour_min, v.parts_wait_days, v.maker, v.model, v.serial,
    v.came_in, v.received_on, v.finished
  from inspected i
  join visits v using (visit)
  where i.failed
), shared as (
  select visit, count(*) as on_ticket
  from failed
  group by visit
), told as (
  select i.visit, i.place, list(distinct f.mode order by f.mode) filter (f.mode is not null) as modes,
    sum(f.minutes) filter (not coalesce(f.routine, false)) as minutes,
    sum(coalesce(f.qty, 1) * coalesce(f.unit_cost, c.unit_cost, 0)) filter (f.action in ('replaced', 'wanted') and not coalesce(f.routine, false)) as parts
  from findings f
  join failed i on i.ticket_no = f.ticket_no and i.position = f.position
  left join parts c using (part_no)
  group by i.visit, i.place
), in_order as (
  select i.visit, i.place, i.position, i.written, i.counted, t.modes,
    coalesce(t.minutes, case when i.opening = 'complaint' then i.labour_min / s.on_ticket end, 0)::double as minutes,
    coalesce(t.parts, 0)::double as parts, coalesce(i.parts_wait_days, 0)::double / s.on_ticket as waiting_days,
    i.serial is not null and coalesce(i.came_in, '?') not in ('accident', 'immersion') as may_come_back, i.received_on,
    last_value(case when i.finished then i.visit end ignore nulls) over so_far as put_right
  from failed i
  join shared s using (visit)
  left join told t on t.visit = i.visit and t.place = i.place
  window so_far as (partition by i.place, i.maker, i.model, i.serial order by i.received_on, i.visit rows between unbounded preceding and 1 preceding)
)
-- New damage (an accident, a dunking) is no comeback, and without a serial no reel is known again.
select o.* exclude (may_come_back, received_on, put_right),
  case when o.may_come_back then o.put_right end as put_right,
  case when o.may_come_back then o.received_on - coalesce(b.finished_on, b.received_on) end as put_right_days
from in_order o
left join visits b on b.visit = o.put_right;
