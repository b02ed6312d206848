-- Every row behind a number on a screen: what was found at a place or of a part, or else the tickets of a job, each with its file and line.
-- Parameters: position varchar, part varchar, job varchar, reel_kind varchar, maker varchar, model varchar
-- Columns: ticket_no varchar, received_on date, maker varchar, model varchar, job varchar, position varchar, action varchar, grade integer,
--   part_no varchar, qty integer, labour_min double, import_no integer, source_file varchar, source_line integer
with same_part as (
  select part_no
  from interchange
  where interchange = getvariable('part')
  union
  select getvariable('part')
), used as (
  select distinct d.ticket_no, d.position, d.part_no
  from demand d
  where d.part_no in (select part_no from same_part)
), found as (
  select f.ticket_no, f.position, f.action, f.grade, f.part_no, f.qty, null::double as labour_min, f.import_no, f.source_file, f.source_line
  from findings f
  where getvariable('position') is not null and f.position = getvariable('position')
  union all
  select f.ticket_no, f.position, f.action, f.grade, u.part_no, f.qty, null, f.import_no, f.source_file, f.source_line
  from findings f
  join used u on u.ticket_no = f.ticket_no and u.position = f.position and (f.part_no is null or f.part_no = u.part_no)
  where getvariable('part') is not null and f.action in ('replaced', 'wanted')
  union all
  select t.ticket_no, null, null, null, null, null, t.labour_min, t.import_no, t.source_file, t.source_line
  from tickets t
  where getvariable('position') is null and getvariable('part') is null
)
select v.ticket_no, v.received_on, v.maker, v.model, v.job, f.position, f.action, f.grade, f.part_no, f.qty, f.labour_min, f.import_no, f.source_file, f.source_line
from found f
join visits v using (ticket_no)
where (getvariable('job') is null or v.job = getvariable('job'))
  and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
  and (getvariable('maker') is null or v.maker = getvariable('maker'))
  and (getvariable('model') is null or v.model = getvariable('model'))
order by v.received_on desc, v.ticket_no, f.import_no, f.source_file, f.source_line, f.position, f.action, f.part_no, f.qty, f.grade;
