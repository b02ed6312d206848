-- From when to when do the records run, and how much is in them?
-- Parameters:
-- Columns: from_date date, to_date date, latest date, tickets bigint, findings bigint, models bigint, parts bigint, orders bigint,
--   open_tickets bigint, tickets_with_serial bigint
with seen as (
  select min(received_on) as from_date, max(received_on) as to_date, max(finished_on) filter (finished_on <= received_on + 60) as done_on,
    count(*) as tickets, count(*) filter (not finished) as open_tickets, count(serial) as tickets_with_serial
  from visits
), named as (
  select count(*) as models
  from (select maker, model from visits group by maker, model)
), ordered as (
  select count(*) as orders
  from orders
), moved as (
  select max(greatest(case when ordered_on <= to_date + 60 then ordered_on end, case when arrived_on <= to_date + 60 then arrived_on end)) as moved_on
  from orders
  cross join seen
)
select from_date, to_date, greatest(to_date, done_on, moved_on) as latest, tickets,
  (select count(*) from findings) as findings, models, (select count(*) from parts) as parts, orders, open_tickets, tickets_with_serial
from seen
cross join named
cross join ordered
cross join moved
order by tickets
