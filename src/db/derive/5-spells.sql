-- How long parts were fished: sights (a part inspected) and spells (a part from its fitting to its end), see METHODS.md 0.
-- Made when first asked for: at a million inspections it takes over a second, and most visits to the app never ask.
-- Exposure of a visit on which a clock is not written is unknown and breaks the sums over it for that clock; a service elsewhere,
-- told by months that are far fewer than lie between two visits here, breaks them for all. Without a serial every sight stands alone.
create table if not exists worn_visits as
select visit, visit_no, opening,
  if(alone = 0, min(visit) over reel, -visit) as reel,
  coalesce(sum(salt_days) over so_far, 0) as salt, count(*) filter (elsewhere or salt_days is null) over so_far as salt_gaps,
  coalesce(sum(use_days) over so_far, 0) as used, count(*) filter (elsewhere or use_days is null) over so_far as used_gaps,
  coalesce(sum(here) over so_far, 0) as months, count(*) filter (elsewhere or here is null) over so_far as months_gaps,
  last_value(rinse ignore nulls) over so_far as rinse, last_value(water ignore nulls) over so_far as water
from (
  select *, if(visit_no is null, visit, 0) as alone,
    if(visit_no > 1, date_diff('day', previous_on, received_on) / 30.4375, months) as here,
    coalesce(visit_no > 1 and months_from = 'written' and months + 3 < 0.6 * date_diff('day', previous_on, received_on) / 30.4375, false) as elsewhere
  from visits
)
window reel as (partition by maker, model, serial, alone),
  so_far as (partition by maker, model, serial, alone order by visit_no rows unbounded preceding);

create view if not exists sights as
with seen as (
  select i.place, w.reel, w.visit, w.visit_no, i.failed, i.replaced, not i.failed as good, i.failed or i.replaced as ends, i.grade,
    w.opening, w.salt, w.salt_gaps, w.used, w.used_gaps, w.months, w.months_gaps
  from inspected i
  join worn_visits w using (visit)
  where i.counted or i.written
), renewals as (
  select distinct place, reel
  from seen
  where ends
), parts_of as (
  select *,
    coalesce(count(*) filter (ends) over before, 0) as part,
    last_value(if(ends, replaced, null) ignore nulls) over before as renewed,
    coalesce(max(if(ends, salt, null)) over before, 0) as salt_from, coalesce(max(if(ends, salt_gaps, null)) over before, 0) as salt_gaps_from,
    coalesce(max(if(ends, used, null)) over before, 0) as used_from, coalesce(max(if(ends, used_gaps, null)) over before, 0) as used_gaps_from,
    coalesce(max(if(ends, months, null)) over before, 0) as months_from, coalesce(max(if(ends, months_gaps, null)) over before, 0) as months_gaps_from
  from seen
  semi join renewals using (place, reel)
  window before as (partition by place, reel order by visit_no rows between unbounded preceding and 1 preceding)
  union all by name
  -- Most parts never end here: they need no order of their visits.
  select *, 0 as part, null as renewed, 0 as salt_from, 0 as salt_gaps_from, 0 as used_from, 0 as used_gaps_from, 0 as months_from, 0 as months_gaps_from
  from seen
  anti join renewals using (place, reel)
)
-- A part found failed and not replaced stays failed: it has no further sights until it is renewed.
select place, reel, visit, visit_no, part, part = 0 as first_sight, opening, good, failed, grade,
  if(salt_gaps = salt_gaps_from, salt - salt_from, null) as salt_days,
  if(used_gaps = used_gaps_from, used - used_from, null) as use_days,
  if(months_gaps = months_gaps_from, months - months_from, null) as months
from parts_of
where coalesce(renewed, true);

create table if not exists spells as
select place, reel, part, bool_and(first_sight) as first_sight, arg_min(opening, coalesce(visit_no, 0)) as first_opening,
  arg_max(visit, coalesce(visit_no, 0)) as visit, max(visit_no) is not null as linked, count(*) as sights, bool_or(failed) as failed,
  max(salt_days) filter (good) as salt_good, max(salt_days) filter (failed) as salt_failed,
  max(use_days) filter (good) as use_good, max(use_days) filter (failed) as use_failed,
  max(months) filter (good) as months_good, max(months) filter (failed) as months_failed
from sights
group by place, reel, part;
