-- Which failures of a part were put right long enough ago, which had failed again soon, and which rows of which files tell so?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date, position varchar, within_days integer
-- Columns: thing integer, ticket_no varchar, received_on date, maker varchar, model varchar, reel_kind varchar, job varchar, counted boolean,
--   hit boolean, why varchar, position varchar, part_no varchar, low double, high double, said varchar, import_no integer, source_file varchar,
--   source_line integer
with ends as (
  select max(received_on) as last_day
  from visits
), told as (
  select f.position, v.*, n.visit as next_visit, n.put_right_days, coalesce(n.put_right_days <= getvariable('within_days'), false) as back
  from failures f
  join visits v using (visit)
  cross join ends e
  left join (select a.* from failures a join visits w using (visit) where w.finished) n on n.put_right = f.visit and n.place = f.place
  where f.position = getvariable('position')
    and v.serial is not null and v.finished
    and coalesce(v.finished_on, v.received_on) + getvariable('within_days')::integer <= e.last_day
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or v.maker = getvariable('maker'))
    and (getvariable('model') is null or v.model = getvariable('model'))
    and (getvariable('water') is null or v.water = getvariable('water'))
    and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
), numbered as (
  select *, (row_number() over (order by visit, next_visit))::integer as thing
  from told
), seen as (
  select thing, position, ticket_no, received_on, import_no, source_file, source_line
  from numbered
  union all
  select n.thing, n.position, v.ticket_no, v.received_on, v.import_no, v.source_file, v.source_line
  from numbered n
  join visits v on v.visit = n.next_visit
  where n.back
), made as (
  select thing, received_on as day, null as said, import_no, source_file, source_line, 0 as nth
  from seen
  union all
  select s.thing, s.received_on, concat_ws(', ', f.mode, 'grade ' || f.grade, f.action), f.import_no, f.source_file, f.source_line, 1
  from findings f
  join seen s using (ticket_no, position)
)
select n.thing, n.ticket_no, n.received_on, n.maker, n.model, n.reel_kind, n.job, true as counted, n.back as hit, null::varchar as why, n.position,
  null::varchar as part_no, null::double as low, if(n.back, n.put_right_days, null)::double as high, m.said, m.import_no, m.source_file, m.source_line
from numbered n
join made m using (thing)
order by n.received_on desc, n.ticket_no, n.thing, m.day, m.nth, m.import_no, m.source_file, m.source_line, m.said;
