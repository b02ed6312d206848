-- Which kinds of reel, makers and waters are in the records, and on how many tickets?
-- Parameters:
-- Columns: what varchar, value varchar, tickets bigint
select 'reel_kind' as what, reel_kind as value, count(*) as tickets
from visits
where reel_kind is not null
group by reel_kind
union all
select 'maker' as what, maker as value, count(*) as tickets
from visits
where maker is not null
group by maker
union all
select 'water' as what, water as value, count(*) as tickets
from visits
where water is not null
group by water
order by what, tickets desc, value
