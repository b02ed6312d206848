-- How many days in a year are such reels fished, and of what kind are most? The middle of visits at least two months after the service before.
-- Parameters: clock varchar, reel_kind varchar, maker varchar, model varchar, water varchar
-- Columns: reels bigint, reel_kind varchar, days double
select count(*) as reels, mode(reel_kind) as reel_kind, median(12 * if(getvariable('clock') = 'use_days', use_days, salt_days) / months)::double as days
from visits
where months >= 2 and opening is distinct from 'complaint'
  and (getvariable('reel_kind') is null or reel_kind = getvariable('reel_kind'))
  and (getvariable('maker') is null or maker = getvariable('maker'))
  and (getvariable('model') is null or model = getvariable('model'))
  and (getvariable('water') is null or water = getvariable('water'))
order by reels
