-- How many visits belong to a reel that is known again, and how many contradict the visit before?
-- Columns: visits bigint, linked bigint, contradicting bigint
select count(*) as visits, count(*) filter (visit_no is not null) as linked,
  count(*) filter (visit_no > 1 and months_from = 'written'
    and abs(months - date_diff('day', previous_on, received_on) / 30.4375) > greatest(3, 0.4 * months)) as contradicting
from visits
order by visits
