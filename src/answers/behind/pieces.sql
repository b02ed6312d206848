-- Which pieces of a part, or of those that are the same thing, were used or wanted, and which rows of which files say so?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date, part varchar
-- Columns: thing integer, ticket_no varchar, received_on date, maker varchar, model varchar, reel_kind varchar, job varchar, counted boolean,
--   hit boolean, why varchar, position varchar, part_no varchar, low double, high double, said varchar, import_no integer, source_file varchar,
--   source_line integer
with used as (
  select d.ticket_no, d.position, d.part_no, d.action, d.part_from_fits, sum(d.qty)::double as pieces
  from group_demand d
  join visits v using (ticket_no)
  where d.interchange = getvariable('part')
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or v.maker = getvariable('maker'))
    and (getvariable('model') is null or v.model = getvariable('model'))
    and (getvariable('water') is null or v.water = getvariable('water'))
    and (getvariable('from_date') is null or d.day >= getvariable('from_date'))
    and (getvariable('to_date') is null or d.day <= getvariable('to_date'))
  group by d.ticket_no, d.position, d.part_no, d.action, d.part_from_fits
), numbered as (
  select *, (row_number() over (order by ticket_no, position, part_no, action, part_from_fits))::integer as thing
  from used
)
select u.thing, v.ticket_no, v.received_on, v.maker, v.model, v.reel_kind, v.job, true as counted, u.action = 'wanted' as hit, null::varchar as why,
  u.position, u.part_no, null::double as low, u.pieces as high, f.action as said, f.import_no, f.source_file, f.source_line
from numbered u
join visits v using (ticket_no)
join findings f on f.ticket_no = u.ticket_no and f.position = u.position and f.action = u.action
  and (f.part_no is null) = u.part_from_fits and (u.part_from_fits or f.part_no = u.part_no)
order by v.received_on desc, v.ticket_no, u.thing, f.import_no, f.source_file, f.source_line;
