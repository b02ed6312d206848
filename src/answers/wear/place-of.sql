-- By which number does a position go? Windows over a million sights are cut to it only when it is a plain number.
-- Parameters: position varchar
-- Columns: place integer
select place::integer as place
from places
where position = getvariable('position')
order by place
