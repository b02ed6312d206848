-- How long was each part good, and by when had it failed, on one clock, with everything that Salt & wear may filter by? Parts alike are put together.
-- Parameters: clock varchar
-- Columns: position varchar, low double, high double, rinse varchar, water varchar, tier varchar, sealed boolean, maker varchar, model varchar,
--   reel_kind varchar, by_fault boolean, first_sight boolean, exposed boolean, parts integer, linked integer, mates integer
with clocked as (
  select s.place, s.linked, w.rinse, w.water, v.tier, v.sealed, v.maker, v.model, v.reel_kind, v.batch, s.first_sight,
    coalesce(s.first_opening = 'complaint', false) as by_fault,
    coalesce(case getvariable('clock') when 'salt_days' then s.salt_good when 'use_days' then s.use_good else round(s.months_good, 1) end, 0) as low,
    case getvariable('clock') when 'salt_days' then s.salt_failed when 'use_days' then s.use_failed else round(s.months_failed, 1) end as high
  from spells s
  join visits v using (visit)
  join worn_visits w using (visit)
  where getvariable('clock') <> 'salt_days' or w.water is distinct from 'fresh'
), alike as (
  -- `exposed` is false for a failure without any exposure and null where the clock is not written.
  select place, low::double as low, if(high > low, high, null)::double as high, rinse, water, tier, sealed, maker, model, reel_kind, by_fault, first_sight,
    if(low = 0 and high is null, null, low > 0 or high > 0) as exposed,
    count(*)::integer as parts, (count(*) filter (linked))::integer as linked, count(batch)::integer as mates
  from clocked
  group by all
)
select p.position, a.* exclude (place)
from alike a
join places p using (place)
order by all
