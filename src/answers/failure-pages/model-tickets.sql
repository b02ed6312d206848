-- How many tickets and reels of each model came in, and how many with something wrong?
-- Parameters: reel_kind varchar, water varchar, from_date date, to_date date
-- Columns: maker varchar, model varchar, tickets bigint, reels bigint, complaints bigint, known bigint
select maker, model, count(*) as tickets, count(distinct serial) as reels,
  count(*) filter (opening = 'complaint') as complaints, count(opening) as known
from visits
where (getvariable('reel_kind') is null or reel_kind = getvariable('reel_kind'))
  and (getvariable('water') is null or water = getvariable('water'))
  and (getvariable('from_date') is null or received_on >= getvariable('from_date'))
  and (getvariable('to_date') is null or received_on <= getvariable('to_date'))
group by maker, model
order by maker nulls last, model
