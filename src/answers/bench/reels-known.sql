-- Which reels does the shop know, from its tickets and its own list, most often seen first?
-- Columns: maker varchar, model varchar, reel_kind varchar, tier varchar, tickets bigint
with seen as (
  select maker, model, mode(reel_kind order by reel_kind) as reel_kind, count(*) as tickets
  from visits
  group by maker, model
)
select coalesce(s.maker, m.maker) as maker, coalesce(s.model, m.model) as model, coalesce(m.reel_kind, s.reel_kind) as reel_kind, m.tier,
  coalesce(s.tickets, 0)::bigint as tickets
from seen s
full join models m on m.model = s.model and m.maker is not distinct from s.maker
order by 5 desc, 2, 1;
