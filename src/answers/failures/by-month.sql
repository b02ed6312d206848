-- How many failures and replacements of a position were there in each month, by the way the reel came in?
-- Parameters: reel_kind varchar, maker varchar, model varchar, water varchar, from_date date, to_date date,
--   opening varchar, denominator varchar, group_code varchar, position varchar
-- Columns: month date, inspected bigint, failed bigint, replaced bigint, replaced_routine bigint
with chosen as (
  select i.*,
    case when getvariable('denominator') = 'strict' then i.written else i.counted end as taken
  from inspections i
  left join position_list p on p.position = i.position
  where i.position = getvariable('position')
    and (getvariable('reel_kind') is null or i.reel_kind = getvariable('reel_kind'))
    and (getvariable('maker') is null or i.maker = getvariable('maker'))
    and (getvariable('model') is null or i.model = getvariable('model'))
    and (getvariable('water') is null or i.water = getvariable('water'))
    and (getvariable('from_date') is null or i.received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or i.received_on <= getvariable('to_date'))
    and (getvariable('opening') = '*' or i.opening = getvariable('opening'))
    and (getvariable('group_code') is null or p.group_code = getvariable('group_code'))
), span as (
  select date_trunc('month', min(received_on))::date as first_month, date_trunc('month', max(received_on))::date as last_month
  from visits
  where (getvariable('from_date') is null or received_on >= getvariable('from_date'))
    and (getvariable('to_date') is null or received_on <= getvariable('to_date'))
), months as (
  select unnest(generate_series(first_month, last_month, interval 1 month))::date as month
  from span
  where first_month is not null
)
select m.month,
  count(*) filter (c.taken) as inspected,
  count(*) filter (c.taken and c.failed) as failed,
  count(*) filter (c.taken and c.replaced and not c.routine) as replaced,
  count(*) filter (c.taken and c.routine) as replaced_routine
from months m
left join chosen c on date_trunc('month', c.received_on)::date = m.month
group by m.month
order by m.month
