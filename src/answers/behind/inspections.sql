-- Which looks at a part is a share of failures counted from, and which rows of which files made each?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date,
--   opening varchar, denominator varchar, position varchar
-- Columns: thing integer, ticket_no varchar, received_on date, maker varchar, model varchar, reel_kind varchar, job varchar, counted boolean,
--   hit boolean, why varchar, position varchar, part_no varchar, low double, high double, said varchar, import_no integer, source_file varchar,
--   source_line integer
with looks as (
  select i.position, i.written, i.failed, v.*, if(getvariable('denominator') = 'strict', i.written, i.counted) as taken
  from inspected i
  join visits v using (visit)
  where i.position = getvariable('position')
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or v.maker = getvariable('maker'))
    and (getvariable('model') is null or v.model = getvariable('model'))
    and (getvariable('water') is null or v.water = getvariable('water'))
    and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
    and (getvariable('opening') = '*' or v.opening = getvariable('opening'))
), made as (
  select visit, null as part_no, null as said, import_no, source_file, source_line, 0 as nth
  from looks
  union all
  select l.visit, f.part_no, concat_ws(', ', f.mode, 'grade ' || f.grade, f.action, if(f.routine, 'as routine', null)),
    f.import_no, f.source_file, f.source_line, 1
  from findings f
  join looks l using (ticket_no, position)
)
select l.visit as thing, l.ticket_no, l.received_on, l.maker, l.model, l.reel_kind, l.job, l.taken as counted, l.taken and l.failed as hit,
  if(l.taken, null, 'its job does not open this part') as why, l.position, m.part_no, null::double as low, null::double as high, m.said,
  m.import_no, m.source_file, m.source_line
from looks l
join made m using (visit)
where l.taken or l.written
order by l.received_on desc, l.ticket_no, m.nth, m.import_no, m.source_file, m.source_line, m.said, m.part_no;
