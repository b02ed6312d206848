-- The numbers of the last tickets, newest first, to see how the shop numbers them.
-- Columns: ticket_no varchar, received_on varchar
select ticket_no, strftime(received_on, '%Y-%m-%d') as received_on
from visits
order by visits.received_on desc, import_no desc, source_line desc, ticket_no desc
limit 60;
