-- Which reels came in, and which row of which file says so?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date
-- Columns: thing integer, ticket_no varchar, received_on date, maker varchar, model varchar, reel_kind varchar, job varchar, counted boolean,
--   hit boolean, why varchar, position varchar, part_no varchar, low double, high double, said varchar, import_no integer, source_file varchar,
--   source_line integer
select visit as thing, ticket_no, received_on, maker, model, reel_kind, job, true as counted, finished as hit, null::varchar as why,
  null::varchar as position, null::varchar as part_no, null::double as low, null::double as high, null::varchar as said,
  import_no, source_file, source_line
from visits
where (getvariable('reel_kind') is null or reel_kind = getvariable('reel_kind'))
  and (getvariable('maker') is null or maker = getvariable('maker'))
  and (getvariable('model') is null or model = getvariable('model'))
  and (getvariable('water') is null or water = getvariable('water'))
  and (getvariable('from_date') is null or received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or received_on <= getvariable('to_date'))
order by received_on desc, ticket_no;
