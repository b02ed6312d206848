-- Which reels still carry a part that was fitted within the months of a suspected batch, and which lots were written beside it?
-- Parameters:
-- Columns: size_or_part varchar, supplier varchar, serial varchar, maker varchar, model varchar, position varchar,
--   position_name varchar, ticket_no varchar, fitted_on date, last_seen_on date, lot varchar, carried boolean
with fitted as (
  select s.size_or_part, s.supplier, d.ticket_no, d.position, v.maker, v.model, v.serial, coalesce(v.finished_on, v.received_on) as fitted_on,
    max(regexp_extract(f.note, '\b(?:lot|batch)[ :.#]*([A-Za-z]*-?[0-9][A-Za-z0-9-]*)', 1, 'i')) as lot
  from demand d
  join visits v using (ticket_no)
  left join parts p on p.part_no = d.part_no
  join suspected s on s.size_or_part = coalesce(p.size, d.part_no) and s.supplier is not distinct from p.supplier
    and coalesce(v.finished_on, v.received_on) between s.from_date and s.to_date
  left join findings f on f.ticket_no = d.ticket_no and f.position = d.position
  where d.action = 'replaced'
  group by s.size_or_part, s.supplier, d.ticket_no, d.position, v.maker, v.model, v.serial, coalesce(v.finished_on, v.received_on)
), later as (
  select f.ticket_no, f.position, max(v.received_on) as last_seen_on, coalesce(bool_or(d.action = 'replaced' and v.received_on > f.fitted_on), false) as replaced
  from fitted f
  join visits v on v.serial = f.serial and v.model = f.model and v.maker is not distinct from f.maker
  left join demand d on d.ticket_no = v.ticket_no and d.position = f.position
  group by f.ticket_no, f.position
)
select f.size_or_part, f.supplier, f.serial, f.maker, f.model, f.position, coalesce(p.name, f.position) as position_name, f.ticket_no, f.fitted_on,
  l.last_seen_on, nullif(f.lot, '') as lot, f.serial is not null and not l.replaced as carried
from fitted f
left join later l on l.ticket_no = f.ticket_no and l.position = f.position
left join position_list p on p.position = f.position
order by f.size_or_part, f.supplier nulls last, f.model, f.serial nulls last, f.fitted_on, f.ticket_no, f.position
