-- What became of each reel that came in: its job, minutes, days and wait?
-- Parameters:
-- Columns: ticket_no varchar, received_on date, finished_on date, finished boolean, job varchar, reel_kind varchar, opening varchar, outcome varchar,
--   labour_min double, parts_wait_days double, charged double
select ticket_no, received_on, finished_on, finished, job, reel_kind, opening, outcome, labour_min, parts_wait_days,
  case when labour_charge is null and parts_charge is null then null else coalesce(labour_charge, 0) + coalesce(parts_charge, 0) end as charged
from visits
where received_on is not null
order by received_on, ticket_no
