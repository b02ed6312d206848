-- The reels in the shop's own list, for telling maker and model apart.
-- Columns: maker varchar, model varchar, reel_kind varchar
select maker, model, max(reel_kind) as reel_kind
from ledger.models
group by maker, model
order by maker nulls last, model;
