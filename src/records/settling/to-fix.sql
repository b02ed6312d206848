-- Findings that name a ticket we do not have.
-- Columns: file_no integer, source_line integer, ticket_no varchar
select distinct file_no, source_line, ticket_no
from staging.findings_fate
where fate = 'to fix'
order by file_no, source_line, ticket_no;
