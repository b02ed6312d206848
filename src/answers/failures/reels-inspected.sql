-- On how many reels, told apart by serial, was each position inspected?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date,
--   opening varchar, denominator varchar, group_code varchar, position varchar
-- Columns: position varchar, maker varchar, model varchar, reels bigint
with looked as (
  select i.position, v.maker, v.model, v.serial
  from inspected i
  join visits v using (visit)
  left join position_list p on p.position = i.position
  where case when getvariable('denominator') = 'strict' then i.written else i.counted end
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or v.maker = getvariable('maker'))
    and (getvariable('model') is null or v.model = getvariable('model'))
    and (getvariable('water') is null or v.water = getvariable('water'))
    and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
    and (getvariable('opening') = '*' or v.opening = getvariable('opening'))
    and (getvariable('position') is null or i.position = getvariable('position'))
    and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
)
select position, maker, model, count(distinct serial) as reels
from looked
group by position, maker, model
order by position, maker nulls last, model
