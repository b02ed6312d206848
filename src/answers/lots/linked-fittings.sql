-- Of how many fitted parts can the reel be known again?
-- Parameters:
-- Columns: fittings bigint, with_serial bigint
select count(*) as fittings, count(v.serial) as with_serial
from demand d
join visits v using (ticket_no)
where d.action = 'replaced'
order by fittings
