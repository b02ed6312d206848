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
  -- A part that a text names by its family alone (?ball bearing) was used, and no position was inspected.
  where not starts_with(f.position, '?')
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
), works as (
  select distinct maker, model, reel_kind, tier, job, finished
  from visits
  where finished
), opened as (
  select k.*, c.position, n.place, c.level
  from works k
  join coverage c on c.reel_kind = k.reel_kind and c.job = k.job and c.not_tier is distinct from coalesce(k.tier, '?')
  join position_list p on p.position = c.position
  join places n on n.position = c.position
  left join shown s on s.model = k.model and s.maker is not distinct from k.maker and s.position = c.position
  left join absent a on a.model = k.model and a.maker is not distinct from k.maker and a.position = c.position
  where a.position is null
    and (not p.optional or s.position is not null)
    and c.position in (select position from written)
), written_on as (
  select visit, list(position) as positions
  from written
  group by visit
), listed_jobs as (
  select distinct reel_kind, job
  from coverage
)
select w.visit, w.position, true as written,
  coalesce(o.level = 'inspected', false) as covered,
  o.level is not null or l.job is null as counted,
  w.failed, w.grade, w.replaced, w.routine, n.place
from written w
join visits v using (visit)
join places n on n.position = w.position
left join opened o on o.finished = v.finished and o.model = v.model and o.reel_kind = v.reel_kind and o.job = v.job
  and o.maker is not distinct from v.maker and o.tier is not distinct from v.tier and o.position = w.position
left join listed_jobs l on l.reel_kind = v.reel_kind and l.job = v.job
union all
select v.visit, o.position, false, true, true, false, null, false, false, o.place
from visits v
left join written_on w using (visit)
join opened o on o.finished = v.finished and o.model = v.model and o.reel_kind = v.reel_kind and o.job = v.job
  and o.maker is not distinct from v.maker and o.tier is not distinct from v.tier
where o.level = 'inspected' and list_contains(w.positions, o.position) is not true;

-- What is known of the visit is looked up there: repeated for every position it would fill the memory five times over.
create or replace view inspections as
select v.ticket_no, i.position, v.received_on, v.maker, v.model, v.reel_kind, v.sealed, v.tier, v.serial, v.batch, v.water, v.rinse,
  v.salt_days, v.use_days, v.months, v.opening, v.job, v.technician, v.warranty,
  i.written, i.covered, i.counted, i.failed, i.grade, i.replaced, i.routine
from inspected i
join visits v using (visit);
