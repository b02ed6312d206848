-- How many pieces of an interchange group (or of all) were used and wanted in each month?
-- Parameters: interchange varchar, reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date
-- Columns: interchange varchar, month date, replaced bigint, wanted bigint
with chosen as (
  select d.interchange, date_trunc('month', d.day)::date as month, d.qty, d.action
  from group_demand d
  join visits v using (ticket_no)
  where d.interchange is not null
    and (getvariable('interchange') is null or d.interchange = getvariable('interchange'))
    and (getvariable('reel_kind') is null or v.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or v.maker = getvariable('maker'))
    and (getvariable('model') is null or v.model = getvariable('model'))
    and (getvariable('water') is null or v.water = getvariable('water'))
    and (getvariable('from_date') is null or d.day >= getvariable('from_date'))
    and (getvariable('to_date') is null or d.day <= getvariable('to_date'))
), span as (
  select date_trunc('month', min(received_on))::date as first_month, date_trunc('month', max(received_on))::date as last_month
  from visits
  where (getvariable('from_date') is null or received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or received_on <= getvariable('to_date'))
), months as (
  select unnest(generate_series(first_month, last_month, interval 1 month))::date as month
  from span
  where first_month is not null
), grid as (
  select g.interchange, m.month
  from (select distinct interchange from chosen) g
  cross join months m
)
select g.interchange, g.month,
  coalesce(sum(c.qty) filter (c.action = 'replaced'), 0)::bigint as replaced,
  coalesce(sum(c.qty) filter (c.action = 'wanted'), 0)::bigint as wanted
from grid g
left join chosen c on c.interchange = g.interchange and c.month = g.month
group by g.interchange, g.month
order by g.interchange, g.month
