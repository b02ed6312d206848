-- Which models came in, and how often?
-- Parameters:
-- Columns: maker varchar, model varchar, reel_kind varchar, tickets bigint
select maker, model, mode(reel_kind order by reel_kind) as reel_kind, count(*) as tickets
from visits
group by maker, model
order by tickets desc, model, maker
