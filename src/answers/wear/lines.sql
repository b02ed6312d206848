-- How long was each part good, and by when had it failed, on one clock? Parts alike are put together.
-- Parameters: clock varchar, first_sights varchar, position varchar, conditions boolean, models boolean, reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date
-- Columns: position varchar, low double, high double, rinse varchar, water varchar, tier varchar, sealed boolean, maker varchar, model varchar, left_out varchar, parts bigint, linked bigint, mates bigint
with clocked as (
  select s.place, s.linked, w.rinse, w.water, v.tier, v.sealed, v.maker, v.model, v.batch, s.failed,
    getvariable('first_sights') <> 'all' and (coalesce(s.first_opening = 'complaint', false) or (s.first_sight and getvariable('first_sights') = 'none')) as chosen,
    coalesce(case getvariable('clock') when 'salt_days' then s.salt_good when 'use_days' then s.use_good else round(s.months_good, 1) end, 0) as low,
    case getvariable('clock') when 'salt_days' then s.salt_failed when 'use_days' then s.use_failed else round(s.months_failed, 1) end as high
  from spells s
  join visits v using (visit)
  join worn_visits w using (visit)
  where (getvariable('position') is null or s.place = (select place from places where position = getvariable('position')))
    and (getvariable('clock') <> 'salt_days' or w.water is distinct from 'fresh')
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or v.maker = getvariable('maker'))
    and (getvariable('model') is null or v.model = getvariable('model'))
    and (getvariable('water') is null or w.water = getvariable('water'))
    and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
), told as (
  select *,
    case
      when chosen then 'chosen by fault'
      when low = 0 and high = 0 then 'no exposure'
      when low = 0 and high is null then 'clock missing'
    end as left_out,
    if(high > low, high, null) as failed_by
  from clocked
), alike as (
  select place, low::double as low, failed_by::double as high,
    if(getvariable('conditions'), rinse, null) as rinse, if(getvariable('conditions'), water, null) as water,
    if(getvariable('conditions'), tier, null) as tier, if(getvariable('conditions'), sealed, null) as sealed,
    if(getvariable('models'), maker, null) as maker, if(getvariable('models'), model, null) as model,
    left_out, count(*) as parts, count(*) filter (linked) as linked, count(batch) as mates
  from told
  group by all
)
select p.position, a.* exclude (place)
from alike a
join places p using (place)
order by all
