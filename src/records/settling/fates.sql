-- How many rows of each file are new, known, to fix, or replaced by a later row. A row that fills two tables counts once.
-- Columns: file_no integer, fate varchar, rows bigint
with fates as (
  select file_no, source_line, fate
  from staging.tickets
  union all
  select file_no, source_line, fate
  from staging.findings
  union all
  select file_no, source_line, fate
  from staging.models
  union all
  select file_no, source_line, fate
  from staging.parts
  union all
  select file_no, source_line, fate
  from staging.fits
  union all
  select file_no, source_line, fate
  from staging.suppliers
  union all
  select file_no, source_line, fate
  from staging.orders
), rows as (
  select file_no, source_line,
    case when bool_or(fate = 'to fix') then 'to fix' when bool_or(fate = 'new') then 'new' when bool_or(fate = 'known') then 'known' else 'replaced' end as fate
  from fates
  group by file_no, source_line
)
select file_no, fate, count(*) as rows
from rows
group by file_no, fate
order by file_no, fate;
