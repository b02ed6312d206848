-- How many tickets opened the position and had nothing written about it?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date,
--   opening varchar, denominator varchar, group_code varchar, position varchar
-- Columns: tickets bigint
select count(*) as tickets
from inspections i
left join position_list p on p.position = i.position
where i.position = getvariable('position')
  and not i.written
  and getvariable('denominator') <> 'strict'
  and (getvariable('reel_kind') is null or i.reel_kind = getvariable('reel_kind'))
  and (getvariable('maker') is null or i.maker = getvariable('maker'))
  and (getvariable('model') is null or i.model = getvariable('model'))
  and (getvariable('water') is null or i.water = getvariable('water'))
  and (getvariable('from_date') is null or i.received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or i.received_on <= getvariable('to_date'))
  and (getvariable('opening') = '*' or i.opening = getvariable('opening'))
  and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
order by tickets
