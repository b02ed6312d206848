-- On how many tickets is the reel told apart by a serial or tag?
-- Parameters:
-- Columns: tickets bigint, with_serial bigint
select count(*) as tickets, count(serial) as with_serial
from visits
order by tickets
