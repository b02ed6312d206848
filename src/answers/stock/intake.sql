-- How many reels came in on each day, by how they came in?
-- Parameters: to_date date
-- Columns: day date, opening varchar, tickets double
select received_on as day, opening, count(*)::double as tickets
from visits
where received_on <= getvariable('to_date')
group by received_on, opening
order by received_on, opening
