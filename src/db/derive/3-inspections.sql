-- One row per ticket and position inspected, and whether it had failed (see RECORDS.md, "Derived").
-- Parameters: failure_grade integer
create or replace table inspections as
with written as (
  select ticket_no, position,
    max(grade) as grade,
    coalesce(bool_or(action in ('replaced', 'wanted') and not coalesce(routine, false)), false)
      or coalesce(max(grade) >= getvariable('failure_grade')::integer, false) as failed,
    coalesce(bool_or(action = 'replaced'), false) as replaced,
    coalesce(bool_or(action in ('replaced', 'wanted') and coalesce(routine, false)), false) as routine
  from findings
  group by ticket_no, position
), shown as (
  select distinct v.maker, v.model, w.position
  from written w
  join visits v using (ticket_no)
  union
  select distinct maker, model, position
  from fits
  where coalesce(qty, 1) > 0
), absent as (
  select distinct maker, model, position
  from fits
  where qty = 0
), opened as (
  select v.ticket_no, c.position, c.level
  from visits v
  join coverage c on c.reel_kind = v.reel_kind and c.job = v.job and c.not_tier is distinct from coalesce(v.tier, '?')
  join position_list p on p.position = c.position
  left join shown s on s.model = v.model and s.maker is not distinct from v.maker and s.position = c.position
  left join absent a on a.model = v.model and a.maker is not distinct from v.maker and a.position = c.position
  where v.finished
    and a.position is null
    and (not p.optional or s.position is not null)
    and c.position in (select position from written)
), listed_jobs as (
  select distinct reel_kind, job
  from coverage
)
select coalesce(w.ticket_no, o.ticket_no) as ticket_no, coalesce(w.position, o.position) as position,
  v.received_on, v.maker, v.model, v.reel_kind, v.sealed, v.tier, v.serial, v.batch, v.water, v.rinse, v.salt_days, v.use_days,
  v.months, v.opening, v.job, v.technician, v.warranty,
  w.position is not null as written,
  coalesce(o.level = 'inspected', false) as covered,
  coalesce(o.level = 'inspected', false) or (w.position is not null and (coalesce(o.level = 'seen', false) or l.job is null)) as counted,
  coalesce(w.failed, false) as failed, w.grade, coalesce(w.replaced, false) as replaced, coalesce(w.routine, false) as routine
from written w
full outer join opened o on o.ticket_no = w.ticket_no and o.position = w.position
join visits v on v.ticket_no = coalesce(w.ticket_no, o.ticket_no)
left join listed_jobs l on l.reel_kind = v.reel_kind and l.job = v.job
where w.position is not null or o.level = 'inspected';
