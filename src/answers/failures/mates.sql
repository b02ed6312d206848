-- How alike do reels fail that came in together? Sums over batches for each part and model.
-- Parameters: reel_kind varchar, water varchar, from_date date, to_date date, group_code varchar, position varchar, denominator varchar
-- Columns: position varchar, maker varchar, model varchar, opening varchar, pairs bigint, alike_failed bigint, failed_in_pairs bigint
with batches as (
  select i.position, v.maker, v.model, v.opening, v.batch, count(*) as n, count(*) filter (i.failed) as k
  from inspected i
  join visits v using (visit)
  left join position_list p on p.position = i.position
  where v.batch is not null
    and case when getvariable('denominator') = 'strict' then i.written else i.counted end
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('water') is null or v.water = getvariable('water'))
    and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
    and (getvariable('position') is null or i.position = getvariable('position'))
    and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
  group by i.position, v.maker, v.model, v.opening, v.batch
)
select position, maker, model, opening, sum(n * (n - 1))::bigint as pairs, sum(k * (k - 1))::bigint as alike_failed,
  sum(k * (n - 1))::bigint as failed_in_pairs
from batches
where n > 1
group by position, maker, model, opening
order by position, maker nulls last, model, opening nulls last
