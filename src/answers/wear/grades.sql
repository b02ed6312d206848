-- In which grade was each part seen, by how long it had been fished?
-- Parameters: clock varchar, place integer, reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date
-- Columns: exposure double, grade integer, written boolean, sights bigint
with graded as (
  select case getvariable('clock') when 'salt_days' then s.salt_days when 'use_days' then s.use_days else round(s.months, 1) end::double as exposure,
    coalesce(s.grade, 0)::integer as grade, s.grade is not null as written
  from sights s
  join visits v using (visit)
  join worn_visits w using (visit)
  where s.place = getvariable('place')::smallint and (s.grade is not null or s.good)
    and (getvariable('clock') <> 'salt_days' or w.water is distinct from 'fresh')
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or v.maker = getvariable('maker'))
    and (getvariable('model') is null or v.model = getvariable('model'))
    and (getvariable('water') is null or w.water = getvariable('water'))
    and (getvariable('from_date') is null or v.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or v.received_on <= getvariable('to_date'))
)
select exposure, grade, written, count(*) as sights
from graded
where exposure > 0
group by exposure, grade, written
order by exposure, grade, written
