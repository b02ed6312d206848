-- How much do one shop's records hold?
-- Parameters:
-- Columns: tickets bigint, findings bigint, inspections bigint, failed bigint, from_date date, to_date date, visits bigint
select count(*) as tickets, (select count(*) from findings) as findings, (select count(*) from inspected where counted) as inspections,
  (select count(*) from inspected where counted and failed) as failed, min(received_on) as from_date, max(received_on) as to_date,
  coalesce(max(visit), 0)::bigint as visits
from visits
order by tickets
