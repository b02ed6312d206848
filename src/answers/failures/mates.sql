-- How alike do reels fail that came in together? Sums over batches for each part and model.
-- Parameters: reel_kind varchar, water varchar, from_date date, to_date date, group_code varchar, position varchar, denominator varchar
-- Columns: position varchar, maker varchar, model varchar, opening varchar, pairs bigint, alike_failed bigint, failed_in_pairs bigint
with batches as (
  select i.place, v.maker, v.model, v.opening, v.batch, count(*) as n, count(*) filter (i.failed) as k
  from inspected i
  join visits v using (visit)
  where v.batch is not null
    and case when getvariable('denominator') = 'strict' then i.written else i.counted end
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('water') is null or v.water = getvariable('water'))
    and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
    and (getvariable('position') is null or i.position = getvariable('position'))
  group by i.place, v.maker, v.model, v.opening, v.batch
)
select n.position, b.maker, b.model, b.opening, sum(b.n * (b.n - 1))::bigint as pairs, sum(b.k * (b.k - 1))::bigint as alike_failed,
  sum(b.k * (b.n - 1))::bigint as failed_in_pairs
from batches b
join places n using (place)
left join position_list p on p.position = n.position
where b.n > 1
  and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
group by n.position, b.maker, b.model, b.opening
order by n.position, b.maker nulls last, b.model, b.opening nulls last
