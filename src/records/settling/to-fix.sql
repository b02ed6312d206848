-- Rows that contradict a ticket we have, or name one we do not have.
-- Columns: file_no integer, source_line integer, ticket_no varchar, why varchar, other_file varchar, other_line integer
select file_no, source_line, ticket_no, 'contradicts' as why, other_file, other_line
from staging.tickets_fate
where fate = 'to fix'
union all
select f.file_no, f.source_line, f.ticket_no, f.why, f.other_file, f.other_line
from staging.findings_fate f
left join staging.tickets_fate t on t.file_no = f.file_no and t.source_line = f.source_line and t.fate = 'to fix'
where f.fate = 'to fix' and t.ticket_no is null
order by file_no, source_line, why;
