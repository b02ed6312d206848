-- How many rows of each file bear a ticket number that another row bears too.
-- Columns: file_no integer, rows bigint
select file_no, count(*) as rows
from staging.numbers_again
group by file_no
order by file_no;
