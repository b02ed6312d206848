-- Which positions has this model, or has it not, as far as fits and findings show?
-- Parameters: maker varchar, model varchar
-- Columns: position varchar, there boolean
with said as (
  select position, coalesce(qty, 1) > 0 as there
  from fits
  where model = getvariable('model') and maker is not distinct from getvariable('maker')
  union all
  select f.position, true
  from findings f
  join visits v using (ticket_no)
  where v.model = getvariable('model') and v.maker is not distinct from getvariable('maker')
)
select position, bool_or(there) as there
from said
where position is not null and not starts_with(position, '?')
group by position
order by position;
