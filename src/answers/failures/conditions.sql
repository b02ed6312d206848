-- How often was each part inspected and had failed on each model, by the conditions the reels came in under, by season (calendar year) and by shop?
-- Each row lists the cells of a part on a model: 1024 × (256 × shop + season - 1900) + condition.
-- Parameters: reel_kind varchar, water varchar, from_date date, to_date date, group_code varchar, position varchar, denominator varchar
-- Columns: position varchar, maker varchar, model varchar, reel_kind varchar, cells integer[], inspected integer[], failed integer[]
with came as (
  select visit, shop_no, maker, model, reel_kind, dense_rank() over (order by maker, model)::integer as model_no, year(received_on)::integer as season,
    (case water when 'fresh' then 1 when 'brackish' then 2 when 'salt' then 3 else 0 end
      + 4 * case rinse when 'always' then 1 when 'sometimes' then 2 when 'never' then 3 else 0 end
      + 16 * case when days is null then 0 when days < 15 then 1 when days < 40 then 2 else 3 end
      + 64 * case sealed when true then 2 when false then 1 else 0 end
      + 256 * case opening when 'planned' then 1 when 'complaint' then 2 else 0 end)::integer as condition
  from (
    select *, case when water = 'fresh' then use_days else salt_days end as days
    from visits
  )
  where (getvariable('reel_kind') is null or reel_kind = getvariable('reel_kind'))
    and (getvariable('water') is null or water = getvariable('water'))
    and (getvariable('from_date') is null or received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or received_on <= getvariable('to_date'))
), named as (
  select model_no, maker, model, max(reel_kind) as reel_kind
  from came
  group by model_no, maker, model
), keyed as (
  -- One number for all there is to group by: words would take three times as long, and a row for each cell twice.
  select visit, (((model_no::bigint * 4096 + shop_no) * 256 + season - 1900) * 1024 + condition) * 65536 as key
  from came
), sums as (
  select k.key + i.place as key, count(*) as inspected, count(*) filter (i.failed) as failed
  from inspected i
  join keyed k using (visit)
  where case when getvariable('denominator') = 'strict' then i.written else i.counted end
    and (getvariable('position') is null or i.position = getvariable('position'))
  group by k.key + i.place
), lists as (
  select (key % 65536)::smallint as place, key // 70368744177664 as model_no, list((key // 65536 % 1073741824)::integer order by key) as cells,
    list(inspected::integer order by key) as inspected, list(failed::integer order by key) as failed
  from sums
  group by key % 65536, key // 70368744177664
)
select n.position, m.maker, m.model, m.reel_kind, l.cells, l.inspected, l.failed
from lists l
join places n using (place)
join named m using (model_no)
left join position_list p on p.position = n.position
where getvariable('group_code') is null or p.group_code = getvariable('group_code')
order by l.place, l.model_no
