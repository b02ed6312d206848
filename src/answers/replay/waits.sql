-- How many days did each finished job wait for parts, as written on its ticket?
-- Parameters: to_date date
-- Columns: ticket_no varchar, wait_days double
select ticket_no, parts_wait_days as wait_days
from visits
where received_on <= getvariable('to_date')
order by ticket_no
