-- Which parts are in the catalogue, and what tells whether two are the same thing?
-- Parameters:
-- Columns: part_no, name, family, size, material, replaces
select part_no, name, family, size, material, replaces
from parts
order by part_no
