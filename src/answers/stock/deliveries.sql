-- How long did each delivery take, and how long had the supplier said?
-- Parameters: as_of date
-- Columns: supplier varchar, ordered_on date, arrived_on date, days bigint, quoted_days double
select o.supplier, o.ordered_on, o.arrived_on, date_diff('day', o.ordered_on, o.arrived_on) as days,
  max(coalesce(s.lead_days, p.lead_days)) as quoted_days
from orders o
left join suppliers s on s.supplier = o.supplier
left join parts p on p.part_no = o.part_no
where o.arrived_on is not null and o.arrived_on <= getvariable('as_of') and o.arrived_on >= o.ordered_on
group by o.supplier, o.order_no, o.ordered_on, o.arrived_on
order by o.supplier, o.ordered_on, o.arrived_on, o.order_no
