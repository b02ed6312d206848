-- Which parts are in the catalogue, and what tells whether two are the same thing?
-- Parameters:
-- Columns: part_no varchar, name varchar, family varchar, size varchar, material varchar, replaces varchar
select part_no, name, family, size, material, replaces
from parts
order by part_no
