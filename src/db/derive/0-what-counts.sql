-- The tickets and findings that count: those whose number only one row bears, and those settled.
create or replace view tickets as
select * exclude (ticket_no), ticket_no
from ledger.tickets
anti join several on several.written = tickets.ticket_no
union all by name
select *
from settled_tickets;

create or replace view findings as
select *
from ledger.findings
anti join several on several.written = findings.ticket_no
union all by name
select *
from settled_findings;
