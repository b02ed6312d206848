-- How many pieces of each interchange group were used, wanted and are waited for in every four weeks back from a day, by how the reel came in?
-- Parameters: to_date date, waiting_from date
-- Columns: interchange varchar, opening varchar, block integer, pieces double, wanted double, waiting double, squares double
with dated as (
  select d.interchange, v.opening, coalesce(v.batch, d.ticket_no) as together, d.day, d.qty, d.action, d.waiting,
    date_diff('day', d.day, getvariable('to_date')) as back
  from group_demand d
  join visits v using (ticket_no)
  where d.day <= getvariable('to_date')
), at_once as (
  select interchange, opening, together, back, sum(qty) as pieces,
    sum(qty) filter (action = 'wanted') as wanted, sum(qty) filter (waiting and day >= getvariable('waiting_from')) as waiting
  from dated
  group by interchange, opening, together, back
), placed as (
  select *,
    (13 * floor(back / 365.25) + least(12, floor((back - ceil(floor(back / 365.25) * 365.25)) / 28)))::integer as block
  from at_once
)
select interchange, opening, block, sum(pieces)::double as pieces, coalesce(sum(wanted), 0)::double as wanted,
  coalesce(sum(waiting), 0)::double as waiting, sum(pieces * pieces)::double as squares
from placed
group by interchange, opening, block
order by interchange, opening, block
