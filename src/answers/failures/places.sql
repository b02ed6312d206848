-- What are the parts of a reel called, and to which group and family do they belong?
-- Parameters:
-- Columns: position varchar, name varchar, group_code varchar, group_name varchar, family varchar
select position, name, group_code, group_name, family
from position_list
order by rowid, position
