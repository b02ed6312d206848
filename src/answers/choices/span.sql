-- From when to when do the records run, and how much is in them?
-- Parameters:
-- Columns: from_date date, to_date date, tickets bigint, findings bigint, models bigint, parts bigint, orders bigint,
--   open_tickets bigint, tickets_with_serial bigint
select
  (select min(received_on) from visits) as from_date,
  (select max(received_on) from visits) as to_date,
  (select count(*) from visits) as tickets,
  (select count(*) from findings) as findings,
  (select count(*) from (select distinct maker, model from visits)) as models,
  (select count(*) from parts) as parts,
  (select count(*) from orders) as orders,
  (select count(*) from visits where not finished) as open_tickets,
  (select count(*) from visits where serial is not null) as tickets_with_serial
order by tickets
