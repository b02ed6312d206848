-- Catalogue as it stands now: of rows with the same key, the newest import counts. Models go by the names that are decided.
create or replace table models as
select if(d.model is null, m.maker, d.to_maker) as maker, coalesce(d.to_model, m.model) as model, reel_kind, sealed, tier, new_price, discontinued_on
from ledger.models m
left join decided.names d on d.model = m.model and d.maker is not distinct from m.maker
qualify row_number() over (
  partition by if(d.model is null, m.maker, d.to_maker), coalesce(d.to_model, m.model)
  order by import_no desc, source_file desc, source_line desc) = 1;

create or replace table parts as
select part_no, name, family, supplier, unit_cost, pack_qty, min_order_qty, lead_days, lead_days_sd, on_hand, on_order, due_on,
  size, material, replaces, essential
from ledger.parts
qualify row_number() over (partition by part_no order by import_no desc, source_file desc, source_line desc) = 1;

create or replace table fits as
select if(d.model is null, f.maker, d.to_maker) as maker, coalesce(d.to_model, f.model) as model, position, part_no, qty
from ledger.fits f
left join decided.names d on d.model = f.model and d.maker is not distinct from f.maker
qualify row_number() over (
  partition by if(d.model is null, f.maker, d.to_maker), coalesce(d.to_model, f.model), position, part_no
  order by import_no desc, source_file desc, source_line desc) = 1;

create or replace table suppliers as
select supplier, order_cost, min_order_value, lead_days, lead_days_sd, review_days
from ledger.suppliers
qualify row_number() over (partition by supplier order by import_no desc, source_file desc, source_line desc) = 1;

create or replace table orders as
select order_no, supplier, part_no, qty, ordered_on, arrived_on, unit_cost
from ledger.orders
qualify row_number() over (partition by order_no, supplier, part_no, ordered_on, coalesce(line_no, 1) order by import_no desc, source_file desc, source_line desc) = 1;
