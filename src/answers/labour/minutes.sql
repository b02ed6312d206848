-- How many minutes did each finished job take?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date
-- Columns: ticket_no varchar, received_on date, job varchar, reel_kind varchar, maker varchar, model varchar, labour_min double,
--   warranty boolean, in_batch boolean, source_file varchar, source_line integer
select ticket_no, received_on, job, reel_kind, maker, model, labour_min, warranty, batch is not null as in_batch,
  source_file, source_line
from visits
where finished
  and (getvariable('reel_kind') is null or reel_kind = getvariable('reel_kind'))
  and (getvariable('maker') is null or maker = getvariable('maker'))
  and (getvariable('model') is null or model = getvariable('model'))
  and (getvariable('water') is null or water = getvariable('water'))
  and (getvariable('from_date') is null or received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or received_on <= getvariable('to_date'))
order by received_on, ticket_no
