-- How many reels came in on each day?
-- Parameters: to_date date
-- Columns: day date, tickets bigint
select received_on as day, count(*) as tickets
from visits
where received_on <= getvariable('to_date')
group by received_on
order by received_on
