-- How many pieces of each group of parts did each shop use and want, in how many months of records, and how many all shops together?
-- Parameters:
-- Columns: interchange varchar, name varchar, shop varchar, replaced bigint, wanted bigint, all_shops bigint, months bigint, first_month date, last_month date
with by_shop as (
  select interchange, shop, sum(replaced) as replaced, sum(wanted) as wanted, count(*) as months, min(month) as first_month, max(month) as last_month
  from kept.demand_months
  group by interchange, shop
), named as (
  select interchange, min(name) as name
  from kept.group_names
  group by interchange
)
select b.interchange, n.name, b.shop, b.replaced::bigint as replaced, b.wanted::bigint as wanted,
  (sum(b.replaced + b.wanted) over (partition by b.interchange))::bigint as all_shops, b.months, b.first_month, b.last_month
from by_shop b
left join named n on n.interchange = b.interchange
order by b.interchange, b.shop
