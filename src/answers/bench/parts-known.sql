-- Parts of the catalogue, and those that are known to sit somewhere in this model.
-- Parameters: maker varchar, model varchar
-- Columns: part_no varchar, name varchar, family varchar, size varchar, on_hand double, positions varchar
with here as (
  select part_no, string_agg(distinct position, ';' order by position) as positions
  from fits
  where part_no is not null and coalesce(qty, 1) > 0
    and model = getvariable('model') and maker is not distinct from getvariable('maker')
  group by part_no
)
select coalesce(p.part_no, h.part_no) as part_no, p.name, p.family, p.size, p.on_hand, h.positions
from parts p
full join here h on h.part_no = p.part_no
order by 1;
