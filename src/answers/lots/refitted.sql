-- How did parts fare that were fitted here and looked at again, within so many days or later?
-- Parameters: within_days integer
-- Columns: size_or_part varchar, supplier varchar, month integer, position varchar, maker varchar, model varchar, technician varchar,
--   fished integer, soon boolean, failed boolean, fitted bigint
with fitted as (
  select distinct d.position, v.maker, v.model, v.serial, v.visit, coalesce(v.finished_on, v.received_on) as fitted_on, v.technician,
    coalesce(p.size, d.part_no) as size_or_part, p.supplier
  from demand d
  join visits v using (ticket_no)
  left join parts p on p.part_no = d.part_no
  where d.action = 'replaced' and d.part_no is not null and v.serial is not null
), looks as (
  select i.position, v.maker, v.model, v.serial, v.received_on, i.failed,
    case when v.water = 'fresh' then v.use_days else v.salt_days end as days
  from inspected i
  join visits v using (visit)
  where v.serial is not null and (i.counted or i.failed)
), again as (
  select f.*, l.received_on as seen_on, l.failed,
    (case when l.days is null then 0 when l.days < 15 then 1 when l.days < 40 then 2 else 3 end)::integer as fished
  from fitted f
  asof join looks l on l.position = f.position and l.model = f.model and l.serial = f.serial and l.maker is not distinct from f.maker
    and f.fitted_on < l.received_on
)
select size_or_part, supplier, (year(fitted_on) * 12 + month(fitted_on) - 1)::integer as month, position, maker, model, technician, fished,
  seen_on - fitted_on <= getvariable('within_days') as soon, failed, count(*) as fitted
from again
group by size_or_part, supplier, year(fitted_on) * 12 + month(fitted_on) - 1, position, maker, model, technician, fished, soon, failed
order by size_or_part, supplier nulls last, month, position, maker nulls last, model, technician nulls last, fished, soon, failed
