-- Which jobs were finished, with how many minutes and for how much, and which row of which file says so?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date
-- Columns: thing integer, ticket_no varchar, received_on date, maker varchar, model varchar, reel_kind varchar, job varchar, counted boolean,
--   hit boolean, why varchar, position varchar, part_no varchar, low double, high double, said varchar, import_no integer, source_file varchar,
--   source_line integer
select visit as thing, ticket_no, received_on, maker, model, reel_kind, job, labour_min is not null as counted,
  labour_charge is not null and not warranty as hit, if(labour_min is null, 'no minutes written', null) as why,
  null::varchar as position, null::varchar as part_no, labour_charge as low, labour_min as high, if(warranty, 'under warranty', null) as said,
  import_no, source_file, source_line
from visits
where finished
  and (getvariable('reel_kind') is null or reel_kind = getvariable('reel_kind'))
  and (getvariable('maker') is null or maker = getvariable('maker'))
  and (getvariable('model') is null or model = getvariable('model'))
  and (getvariable('water') is null or water = getvariable('water'))
  and (getvariable('from_date') is null or received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or received_on <= getvariable('to_date'))
order by received_on desc, ticket_no;
