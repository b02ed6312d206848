-- Which faults had the failed parts, by model and way of coming in?
-- Parameters: reel_kind varchar, water varchar, from_date date, to_date date, group_code varchar, position varchar, denominator varchar
-- Columns: position varchar, maker varchar, model varchar, opening varchar, mode varchar, failed bigint
select i.position, v.maker, v.model, v.opening, f.mode, count(distinct i.visit) as failed
from inspected i
join visits v using (visit)
join findings f on f.ticket_no = v.ticket_no and f.position = i.position
left join position_list p on p.position = i.position
where i.failed
  and f.mode is not null
  and case when getvariable('denominator') = 'strict' then i.written else i.counted end
  and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
  and (getvariable('water') is null or v.water = getvariable('water'))
  and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
  and (getvariable('position') is null or i.position = getvariable('position'))
  and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
group by i.position, v.maker, v.model, v.opening, f.mode
order by i.position, v.maker nulls last, v.model, v.opening nulls last, failed desc, f.mode
