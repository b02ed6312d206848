-- How many pieces of each interchange group were used and wanted, in the whole period and lately, and what do open jobs wait for?
-- Parameters: from_date date, recent_from date, to_date date, waiting_from date
-- Columns: interchange varchar, pieces bigint, wanted bigint, recent bigint, waiting bigint, squares bigint
with named as (
  select d.*, coalesce(v.batch, d.ticket_no) as together
  from group_demand d
  join visits v using (ticket_no)
  where d.interchange is not null and d.day <= getvariable('to_date')
), at_once as (
  select interchange, together, day, sum(qty) as pieces
  from named
  where day >= getvariable('from_date')
  group by interchange, together, day
), clumps as (
  select interchange, sum(pieces * pieces) as squares
  from at_once
  group by interchange
)
select n.interchange,
  coalesce(sum(n.qty) filter (n.day >= getvariable('from_date')), 0)::bigint as pieces,
  coalesce(sum(n.qty) filter (n.day >= getvariable('from_date') and n.action = 'wanted'), 0)::bigint as wanted,
  coalesce(sum(n.qty) filter (n.day >= getvariable('recent_from')), 0)::bigint as recent,
  coalesce(sum(n.qty) filter (n.waiting and n.day >= getvariable('waiting_from')), 0)::bigint as waiting,
  coalesce(any_value(c.squares), 0)::bigint as squares
from named n
left join clumps c on c.interchange = n.interchange
group by n.interchange
order by n.interchange
