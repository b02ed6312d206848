-- Which reels does the shop's own list hold, and the list that comes in now?
-- Columns: maker varchar, model varchar, reel_kind varchar
select maker, model, max(reel_kind) as reel_kind
from (select maker, model, reel_kind from ledger.models union all select maker, model, reel_kind from staging.models)
group by maker, model
order by maker nulls last, model;
