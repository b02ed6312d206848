-- How many rows of each file are new, known, to fix, or replaced by a later row. A row that fills two tables counts once.
-- Columns: file_no integer, fate varchar, rows bigint
with fates as (
  select file_no, source_line, coalesce(fate, 'new') as fate
  from staging.tickets
  left join staging.tickets_fate using (file_no, source_line, row_key)
  union all
  select file_no, source_line, coalesce(fate, 'new') as fate
  from staging.findings
  left join staging.findings_fate using (file_no, source_line, row_key)
  union all
  select file_no, source_line, coalesce(fate, 'new') as fate
  from staging.models
  left join staging.models_fate using (file_no, source_line)
  union all
  select file_no, source_line, coalesce(fate, 'new') as fate
  from staging.parts
  left join staging.parts_fate using (file_no, source_line)
  union all
  select file_no, source_line, coalesce(fate, 'new') as fate
  from staging.fits
  left join staging.fits_fate using (file_no, source_line)
  union all
  select file_no, source_line, coalesce(fate, 'new') as fate
  from staging.suppliers
  left join staging.suppliers_fate using (file_no, source_line)
  union all
  select file_no, source_line, coalesce(fate, 'new') as fate
  from staging.orders
  left join staging.orders_fate using (file_no, source_line)
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
