-- What is on the shelf and in the catalogue, and from whom does it come?
-- Parameters:
-- Columns: part_no varchar, interchange varchar, refused varchar, name varchar, family varchar, material varchar, supplier varchar,
--   unit_cost double, pack_qty integer, min_order_qty integer, on_hand double, on_order double, due_on date, essential boolean, criticality varchar, replaces varchar,
--   lead_days double, lead_days_sd double, review_days double, order_cost double, min_order_value double, listed_on_hand double,
--   listed_on_order double
with critical as (
  select f.part_no, min(l.criticality) as criticality
  from fits f
  join position_list l using (position)
  where f.part_no is not null and coalesce(f.qty, 1) > 0
  group by f.part_no
)
select p.part_no, coalesce(g.interchange, p.part_no) as interchange, g.refused, p.name, p.family, p.material, p.supplier,
  p.unit_cost, p.pack_qty, p.min_order_qty, p.on_hand, p.on_order, p.due_on, p.essential, c.criticality, p.replaces,
  coalesce(p.lead_days, s.lead_days) as lead_days,
  case when p.lead_days is null then s.lead_days_sd else p.lead_days_sd end as lead_days_sd,
  s.review_days, s.order_cost, s.min_order_value, p.on_hand as listed_on_hand, p.on_order as listed_on_order
from parts p
left join interchange g on g.part_no = p.part_no
left join suppliers s on s.supplier = p.supplier
left join critical c on c.part_no = p.part_no
order by interchange, p.part_no
