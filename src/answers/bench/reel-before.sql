-- When was the reel with this serial here before, newest first?
-- Parameters: serial varchar, before varchar
-- Columns: ticket_no varchar, received_on varchar, maker varchar, model varchar, reel_kind varchar, job varchar, months double
select ticket_no, strftime(received_on, '%Y-%m-%d') as received_on, maker, model, reel_kind, job,
  date_diff('day', received_on, getvariable('before')::date) / 30.4375 as months
from visits
where visit_no is not null
  and replace(upper(regexp_replace(serial, '[^A-Za-z0-9]+', '', 'g')), 'O', '0')
    = replace(upper(regexp_replace(getvariable('serial'), '[^A-Za-z0-9]+', '', 'g')), 'O', '0')
order by visits.received_on desc, visits.ticket_no desc
limit 5;
