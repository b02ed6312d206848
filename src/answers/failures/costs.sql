-- What did the failures of each part on each model cost: minutes, parts, waiting, coming back?
-- Parameters: reel_kind varchar, water varchar, from_date date, to_date date, group_code varchar, position varchar, comeback_days integer
-- Columns: position varchar, maker varchar, model varchar, minutes double, parts double, waiting_days double, comebacks bigint, minute_worth double
with earned as (
  select sum(labour_charge) / nullif(sum(labour_min), 0) as minute_worth
  from visits
  where labour_charge > 0 and labour_min > 0
)
select f.position, v.maker, v.model, sum(f.minutes) as minutes, sum(f.parts) as parts, sum(f.waiting_days) as waiting_days,
  count(*) filter (f.put_right_days <= getvariable('comeback_days')) as comebacks, max(e.minute_worth) as minute_worth
from failures f
join visits v using (visit)
cross join earned e
left join position_list p on p.position = f.position
where (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
  and (getvariable('water') is null or v.water = getvariable('water'))
  and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
  and (getvariable('position') is null or f.position = getvariable('position'))
  and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
group by f.position, v.maker, v.model
order by f.position, v.maker nulls last, v.model
