-- Which faults had the failed parts, by model and way of coming in?
-- Parameters: reel_kind varchar, water varchar, from_date date, to_date date, group_code varchar, position varchar, denominator varchar
-- Columns: position varchar, maker varchar, model varchar, opening varchar, mode varchar, failed bigint
with faults as (
  select visit, position, unnest(modes) as mode
  from failures
  where case when getvariable('denominator') = 'strict' then written else counted end
    and (getvariable('position') is null or position = getvariable('position'))
)
select f.position, v.maker, v.model, v.opening, f.mode, count(*) as failed
from faults f
join visits v using (visit)
left join position_list p on p.position = f.position
where (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
  and (getvariable('water') is null or v.water = getvariable('water'))
  and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
  and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
group by f.position, v.maker, v.model, v.opening, f.mode
order by f.position, v.maker nulls last, v.model, v.opening nulls last, failed desc, f.mode
