-- One row per ticket and position inspected, and whether it had failed (see RECORDS.md, "Derived").
-- Parameters: failure_grade integer
create or replace table inspected as
with written as (
  select v.visit, f.position,
    max(f.grade) as grade,
    coalesce(bool_or(f.action in ('replaced', 'wanted') and not coalesce(f.routine, false)), false)
      or coalesce(max(f.grade) >= getvariable('failure_grade')::integer, false) as failed,
    coalesce(bool_or(f.action = 'replaced'), false) as replaced,
    coalesce(bool_or(f.action in ('replaced', 'wanted') and coalesce(f.routine, false)), false) as routine
  from findings f
  join visits v using (ticket_no)
  group by v.visit, f.position
), shown as (
  select distinct v.maker, v.model, w.position
  from written w
  join visits v using (visit)
  union
  select distinct maker, model, position
  from fits
  where coalesce(qty, 1) > 0
), absent as (
  select distinct maker, model, position
  from fits
  where qty = 0
), opened as (
  select v.visit, c.position, c.level
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
select v.visit, coalesce(w.position, o.position) as position,
  w.position is not null as written,
  coalesce(o.level = 'inspected', false) as covered,
  coalesce(o.level = 'inspected', false) or (w.position is not null and (coalesce(o.level = 'seen', false) or l.job is null)) as counted,
  coalesce(w.failed, false) as failed, w.grade, coalesce(w.replaced, false) as replaced, coalesce(w.routine, false) as routine
from written w
full outer join opened o on o.visit = w.visit and o.position = w.position
join visits v on v.visit = coalesce(w.visit, o.visit)
left join listed_jobs l on l.reel_kind = v.reel_kind and l.job = v.job
where w.position is not null or o.level = 'inspected';

-- What is known of the visit is looked up there: repeated for every position it would fill the memory five times over.
create or replace view inspections as
select v.ticket_no, i.position, v.received_on, v.maker, v.model, v.reel_kind, v.sealed, v.tier, v.serial, v.batch, v.water, v.rinse,
  v.salt_days, v.use_days, v.months, v.opening, v.job, v.technician, v.warranty,
  i.written, i.covered, i.counted, i.failed, i.grade, i.replaced, i.routine
from inspected i
join visits v using (visit);
