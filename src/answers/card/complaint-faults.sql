-- What was found failed on finished tickets, by the words of their complaint. Positions are joined by semicolons; "" where nothing was.
-- Parameters: reel_kind varchar
-- Columns: complaint varchar, failed varchar, tickets bigint
with found as (
  select v.visit, v.complaint, coalesce(string_agg(i.position, ';' order by i.position), '') as failed
  from visits v
  left join inspected i on i.visit = v.visit and i.failed
  where v.finished and v.complaint is not null and v.reel_kind = getvariable('reel_kind')
  group by v.visit, v.complaint
)
select complaint, failed, count(*) as tickets
from found
group by complaint, failed
order by complaint, failed
