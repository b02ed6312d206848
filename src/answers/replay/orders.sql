-- Which orders went out, for how many pieces of which group, and when did they come?
-- Parameters: to_date date
-- Columns: order_no varchar, supplier varchar, interchange varchar, ordered_on date, arrived_on date, pieces bigint, unit_cost double
select o.order_no, o.supplier, coalesce(g.interchange, o.part_no) as interchange, o.ordered_on, o.arrived_on, o.qty::bigint as pieces, o.unit_cost
from orders o
left join interchange g on g.part_no = o.part_no
where o.ordered_on <= getvariable('to_date') and o.qty is not null
order by o.ordered_on, o.order_no, interchange, pieces, o.arrived_on, o.unit_cost
