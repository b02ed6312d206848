-- Is there a ticket of this number already, however it is written?
-- Parameters: ticket_no varchar
-- Columns: ticket_no varchar, received_on varchar, maker varchar, model varchar
select ticket_no, strftime(received_on, '%Y-%m-%d') as received_on, maker, model
from visits
where number_key(ticket_no) = number_key(getvariable('ticket_no'))
order by visits.ticket_no
limit 1;
