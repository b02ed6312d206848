-- What was ordered from each supplier in the year before a day?
-- Parameters: as_of date, from_date date
-- Columns: supplier varchar, orders bigint, lines bigint, spend double, unpriced bigint, last_on date
select o.supplier, count(distinct (o.order_no, o.ordered_on)) as orders, count(*) as lines,
  sum(o.qty * coalesce(o.unit_cost, p.unit_cost))::double as spend,
  count(*) filter (coalesce(o.unit_cost, p.unit_cost) is null) as unpriced, max(o.ordered_on) as last_on
from orders o
left join parts p on p.part_no = o.part_no
where o.supplier is not null and o.ordered_on > getvariable('from_date') and o.ordered_on <= getvariable('as_of')
group by o.supplier
order by o.supplier
