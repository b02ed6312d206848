-- Beside which fitted parts was a lot or batch written, and when were they fitted?
-- Parameters:
-- Columns: size_or_part varchar, supplier varchar, month integer, name varchar, count bigint
with named as (
  select distinct d.ticket_no, d.position, coalesce(p.size, d.part_no) as size_or_part, p.supplier, coalesce(v.finished_on, v.received_on) as fitted_on,
    upper(regexp_extract(f.note, '\b(?:lot|batch)[ :.#]*([A-Za-z]*-?[0-9][A-Za-z0-9-]*)', 1, 'i')) as name
  from demand d
  join visits v using (ticket_no)
  join findings f on f.ticket_no = d.ticket_no and f.position = d.position
  left join parts p on p.part_no = d.part_no
  where d.action = 'replaced' and d.part_no is not null and f.note is not null
)
select size_or_part, supplier, (year(fitted_on) * 12 + month(fitted_on) - 1)::integer as month, name, count(*) as count
from named
where name <> ''
group by size_or_part, supplier, year(fitted_on) * 12 + month(fitted_on) - 1, name
order by size_or_part, supplier nulls last, month, name
