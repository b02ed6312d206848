-- One row per ticket and position inspected, and whether it had failed (see RECORDS.md, "Derived"). Positions and kinds of work go by number
-- until the end: joined by words, millions of rows take half as long again.
-- Parameters: failure_grade integer
create or replace table inspected as
with seen as (
  select v.visit, n.place, f.grade, coalesce(f.action = 'replaced', false) as replaced,
    coalesce(f.action in ('replaced', 'wanted'), false) as taken, coalesce(f.routine, false) as routine
  from findings f
  join visits v using (ticket_no)
  join places n on n.position = f.position
  -- A part that a text names by its family alone (?ball bearing) was used, and no position was inspected.
  where not starts_with(f.position, '?')
), written as (
  select visit, place, max(grade) as grade,
    bool_or(taken and not routine) or coalesce(max(grade) >= getvariable('failure_grade')::integer, false) as failed,
    bool_or(replaced) as replaced, bool_or(taken and routine) as routine
  from seen
  group by visit, place
), fitting as (
  select maker, model, place, qty
  from fits
  join places using (position)
), shown as (
  select distinct v.maker, v.model, w.place
  from written w
  join visits v using (visit)
  union
  select distinct maker, model, place
  from fitting
  where coalesce(qty, 1) > 0
), absent as (
  select distinct maker, model, place
  from fitting
  where qty = 0
), works as (
  select *, (row_number() over ())::integer as work_no
  from (select distinct maker, model, reel_kind, tier, job from visits where finished)
), opened as (
  select k.work_no, n.place, n.position, c.level = 'inspected' as inspected
  from works k
  join coverage c on c.reel_kind = k.reel_kind and c.job = k.job and c.not_tier is distinct from coalesce(k.tier, '?')
  join position_list p on p.position = c.position
  join places n on n.position = c.position
  left join shown s on s.model = k.model and s.maker is not distinct from k.maker and s.place = n.place
  left join absent a on a.model = k.model and a.maker is not distinct from k.maker and a.place = n.place
  where a.place is null and (not p.optional or s.place is not null) and n.place in (select place from written)
), listed_jobs as (
  select distinct reel_kind, job from coverage
), worked as (
  select v.visit, k.work_no, l.job is null as not_listed
  from visits v
  left join works k on v.finished and k.model = v.model and k.reel_kind = v.reel_kind and k.job = v.job
    and k.maker is not distinct from v.maker and k.tier is not distinct from v.tier
  left join listed_jobs l on l.reel_kind = v.reel_kind and l.job = v.job
), written_on as (
  select visit, list(place) as places
  from written
  group by visit
)
select w.visit, n.position, true as written, coalesce(o.inspected, false) as covered, o.inspected is not null or v.not_listed as counted,
  w.failed, w.grade, w.replaced, w.routine, w.place
from written w
join worked v using (visit)
join places n using (place)
left join opened o on o.work_no = v.work_no and o.place = w.place
union all
select v.visit, o.position, false, true, true, false, null, false, false, o.place
from worked v
left join written_on w using (visit)
join opened o using (work_no)
where o.inspected and list_contains(w.places, o.place) is not true;

-- What is known of the visit is looked up there: repeated for every position it would fill the memory five times over.
create or replace view inspections as
select v.ticket_no, i.position, v.received_on, v.maker, v.model, v.reel_kind, v.sealed, v.tier, v.serial, v.batch, v.water, v.rinse,
  v.salt_days, v.use_days, v.months, v.opening, v.job, v.technician, v.warranty,
  i.written, i.covered, i.counted, i.failed, i.grade, i.replaced, i.routine
from inspected i
join visits v using (visit);
