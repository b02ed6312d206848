-- Which jobs on which kinds of reel were done in all shops, the most frequent first?
-- Parameters:
-- Columns: job varchar, reel_kind varchar, jobs bigint
select job, reel_kind, sum(jobs)::bigint as jobs
from kept.minutes
group by job, reel_kind
order by jobs desc, job nulls last, reel_kind nulls last
