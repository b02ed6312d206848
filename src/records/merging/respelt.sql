-- Ticket numbers that are written unlike the shop's usual way, and the way they are read.
-- Columns: written varchar, ticket_no varchar
select written, ticket_no
from renumbered
order by ticket_no, written;
