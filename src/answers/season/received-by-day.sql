-- How many reels came in on each day?
-- Parameters:
-- Columns: day date, tickets bigint
select received_on as day, count(*) as tickets
from visits
where received_on is not null
group by received_on
order by day
