-- What did the failures of each part on each model cost: minutes, parts, waiting, coming back?
-- Parameters: reel_kind varchar, water varchar, from_date date, to_date date, group_code varchar, position varchar, comeback_days integer
-- Columns: position varchar, maker varchar, model varchar, minutes double, parts double, waiting_days double, comebacks bigint, minute_worth double
with shared as (
  select visit, count(*) as on_ticket
  from inspected
  where failed
  group by visit
), failures as (
  select i.position, i.visit, s.on_ticket
  from inspected i
  join shared s using (visit)
  where i.failed
), used as (
  select f.ticket_no, f.position, sum(f.minutes) as minutes,
    sum(coalesce(f.qty, 1) * coalesce(f.unit_cost, c.unit_cost, 0)) filter (f.action in ('replaced', 'wanted')) as parts
  from findings f
  left join parts c using (part_no)
  where not coalesce(f.routine, false)
  group by f.ticket_no, f.position
), told as (
  select f.position, v.maker, v.model, v.reel_kind, v.water, v.received_on,
    coalesce(u.minutes, case when v.opening = 'complaint' then v.labour_min / f.on_ticket end, 0) as minutes,
    coalesce(u.parts, 0) as parts,
    coalesce(v.parts_wait_days, 0) / f.on_ticket as waiting_days,
    v.serial is not null
      and v.received_on - lag(coalesce(v.finished_on, v.received_on)) over (partition by v.serial, f.position, v.model, v.maker order by v.received_on, v.visit)
        <= getvariable('comeback_days') as back
  from failures f
  join visits v using (visit)
  left join used u on u.ticket_no = v.ticket_no and u.position = f.position
), earned as (
  select sum(labour_charge) / nullif(sum(labour_min), 0) as minute_worth
  from visits
  where labour_charge > 0 and labour_min > 0
)
select t.position, t.maker, t.model, sum(t.minutes) as minutes, sum(t.parts) as parts, sum(t.waiting_days) as waiting_days,
  count(*) filter (t.back) as comebacks, max(e.minute_worth) as minute_worth
from told t
cross join earned e
left join position_list p on p.position = t.position
where (getvariable('reel_kind') is null or t.reel_kind = getvariable('reel_kind'))
  and (getvariable('water') is null or t.water = getvariable('water'))
  and (getvariable('from_date') is null or t.received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or t.received_on <= getvariable('to_date'))
  and (getvariable('position') is null or t.position = getvariable('position'))
  and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
group by t.position, t.maker, t.model
order by t.position, t.maker nulls last, t.model
