-- What has been ordered and has not arrived?
-- Parameters: as_of date, since date
-- Columns: interchange varchar, pieces bigint, orders bigint
select coalesce(g.interchange, o.part_no) as interchange, sum(o.qty)::bigint as pieces, count(*) as orders
from orders o
left join interchange g on g.part_no = o.part_no
where o.ordered_on <= getvariable('as_of') and o.ordered_on >= getvariable('since')
  and (o.arrived_on is null or o.arrived_on > getvariable('as_of'))
group by coalesce(g.interchange, o.part_no)
order by interchange
