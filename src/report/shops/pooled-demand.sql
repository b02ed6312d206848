-- How many pieces of each group of parts did all shops use and want in each month, how many shops, and how many did the shop with most?
-- Parameters:
-- Columns: interchange varchar, name varchar, month date, replaced bigint, wanted bigint, shops bigint, shops_recording bigint, most bigint
with spans as (
  select shop_no, date_trunc('month', min(received_on))::date as first_month, date_trunc('month', max(received_on))::date as last_month
  from kept.visits
  group by shop_no
), recording as (
  select month::date as month, count(*) as shops
  from (select unnest(generate_series(first_month, last_month, interval 1 month)) as month from spans)
  group by month
), used as (
  select interchange, month, sum(replaced) as replaced, sum(wanted) as wanted, count(*) filter (replaced + wanted > 0) as shops, max(replaced + wanted) as most
  from kept.demand_months
  group by interchange, month
), named as (
  select g.interchange, min(n.name) as name
  from (select distinct interchange from kept.demand_months) g
  left join kept.group_names n on n.interchange = g.interchange
  group by g.interchange
)
select n.interchange, n.name, r.month, coalesce(u.replaced, 0)::bigint as replaced, coalesce(u.wanted, 0)::bigint as wanted, coalesce(u.shops, 0) as shops,
  r.shops as shops_recording, coalesce(u.most, 0) as most
from named n
cross join recording r
left join used u on u.interchange = n.interchange and u.month = r.month
order by n.interchange, r.month
