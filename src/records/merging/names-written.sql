-- Every maker and model as it is written, how often on tickets, and whether the shop's own list of models has it.
-- Columns: maker varchar, model varchar, n bigint, listed boolean
with written as (
  select maker, model, count(*) as n, false as listed
  from ledger.tickets
  group by maker, model
  union all
  select distinct maker, model, 0 as n, true as listed
  from ledger.models
  union all
  select distinct maker, model, 0 as n, false as listed
  from ledger.fits
)
select maker, model, sum(n)::bigint as n, bool_or(listed) as listed
from written
where model is not null
group by maker, model
order by maker nulls first, model;
