-- Catalogue as it stands now: of rows with the same key, the newest import counts.
create or replace table models as
select maker, model, reel_kind, sealed, tier, new_price, discontinued_on
from ledger.models
qualify row_number() over (partition by maker, model order by import_no desc, source_file desc, source_line desc) = 1;

create or replace table parts as
select part_no, name, family, supplier, unit_cost, pack_qty, min_order_qty, lead_days, lead_days_sd, on_hand, on_order, due_on,
  size, material, replaces, essential
from ledger.parts
qualify row_number() over (partition by part_no order by import_no desc, source_file desc, source_line desc) = 1;

create or replace table fits as
select maker, model, position, part_no, qty
from ledger.fits
qualify row_number() over (partition by maker, model, position, part_no order by import_no desc, source_file desc, source_line desc) = 1;

create or replace table suppliers as
select supplier, order_cost, min_order_value, lead_days, lead_days_sd, review_days
from ledger.suppliers
qualify row_number() over (partition by supplier order by import_no desc, source_file desc, source_line desc) = 1;

create or replace table orders as
select order_no, supplier, part_no, qty, ordered_on, arrived_on, unit_cost
from ledger.orders
qualify row_number() over (partition by order_no, supplier, part_no, ordered_on, coalesce(line_no, 1) order by import_no desc, source_file desc, source_line desc) = 1;

create or replace view findings as
select *
from ledger.findings;
