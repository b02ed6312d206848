-- How many reels came in in every four weeks back from a day, by how they came in?
-- Parameters: to_date date
-- Columns: opening varchar, block integer, tickets double
with counted as (
  select opening, date_diff('day', received_on, getvariable('to_date')) as back,
    floor(date_diff('day', received_on, getvariable('to_date')) / 365.25) as year
  from visits
  where received_on <= getvariable('to_date')
), placed as (
  select opening,
    (13 * year + least(12, floor((back - ceil(year * 365.25)) / 28)))::integer as block
  from counted
)
select opening, block, count(*)::double as tickets
from placed
group by opening, block
order by opening, block
