-- Which row of its ticket a finding came with, in files whose rows fill both tables.
update staging.findings
set of_version = t.row_key
from staging.tickets t
where t.file_no = staging.findings.file_no and t.ticket_no = staging.findings.ticket_no;
