-- How did parts fare that were fitted here and looked at again, within so many days or later?
-- Parameters: within_days integer
-- Columns: size_or_part varchar, supplier varchar, month integer, position varchar, maker varchar, model varchar, technician varchar,
--   fished integer, soon boolean, failed boolean, fitted bigint
with reels as (
  select visit, ticket_no, received_on, coalesce(finished_on, received_on) as left_on, maker, model, technician,
    if(water = 'fresh', use_days, salt_days) as days,
    -- Joins by number take a tenth of the time of joins by maker, model and serial.
    min(visit) over (partition by maker, model, serial) as reel
  from visits
  where serial is not null
), fitted as (
  select distinct r.reel, n.place, r.visit, r.left_on, d.part_no
  from demand d
  join reels r using (ticket_no)
  join places n using (position)
  where d.action = 'replaced' and d.part_no is not null
), again as (
  select f.visit, f.place, f.part_no, min((l.received_on, l.visit, i.failed)) as look
  from fitted f
  join reels l on l.reel = f.reel and l.received_on > f.left_on
  join inspected i on i.visit = l.visit and i.place = f.place
  where i.counted or i.failed
  group by f.visit, f.place, f.part_no
), pieces as (
  select distinct a.visit, n.position, coalesce(p.size, a.part_no) as size_or_part, p.supplier, a.look[2] as seen, a.look[3] as failed
  from again a
  join places n using (place)
  left join parts p using (part_no)
)
select p.size_or_part, p.supplier, (year(f.left_on) * 12 + month(f.left_on) - 1)::integer as month, p.position, f.maker, f.model, f.technician,
  (case when l.days is null then 0 when l.days < 15 then 1 when l.days < 40 then 2 else 3 end)::integer as fished,
  l.received_on - f.left_on <= getvariable('within_days') as soon, p.failed, count(*) as fitted
from pieces p
join reels f using (visit)
join reels l on l.visit = p.seen
group by p.size_or_part, p.supplier, month, p.position, f.maker, f.model, f.technician, fished, soon, p.failed
order by p.size_or_part, p.supplier nulls last, month, p.position, f.maker nulls last, f.model, f.technician nulls last, fished, soon, p.failed
