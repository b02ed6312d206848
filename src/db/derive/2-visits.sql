-- One row per ticket, with what the model list knows of the reel and the visit of the same serial before it. `shop_no` tells shops apart
-- where several are pooled; one's own shop is 0.
create or replace table visits as
with named as (
  select t.* replace (if(d.model is null, t.maker, d.to_maker) as maker, coalesce(d.to_model, t.model) as model),
    -- What reads like a person's name links nothing: two customers may bear it.
    case
      when regexp_matches(serial, '(?i)^(mr|mrs|ms|dr)\b') or regexp_full_match(serial, '[A-Z]([a-z]+|\.) +[A-Z][a-z]+') then null
      else nullif(replace(upper(regexp_replace(serial, '[^A-Za-z0-9]+', '', 'g')), 'O', '0'), '')
    end as reel_tag
  from tickets t
  left join decided.names d on d.model = t.model and d.maker is not distinct from t.maker
), known as (
  select t.*, m.sealed, m.tier, m.new_price,
    coalesce(t.reel_kind, m.reel_kind) as kind,
    case
      when t.outcome = 'waiting' then false
      else t.finished_on is not null or t.labour_min is not null or t.outcome is not null
    end as finished
  from named t
  left join models m on m.model = t.model and m.maker is not distinct from t.maker
), in_order as (
  select *,
    lag(ticket_no) over reel as previous_ticket,
    lag(received_on) over reel as previous_on,
    row_number() over reel as nth,
    first_value(serial) over reel as first_serial
  from known
  window reel as (partition by maker, model, reel_tag order by received_on, ticket_no)
)
select (row_number() over ())::integer as visit, 0::smallint as shop_no, ticket_no, received_on, finished_on, finished, maker, model, kind as reel_kind, sealed, tier, new_price,
  if(reel_tag is null, serial, first_serial) as serial,
  case when reel_tag is null then null else nth end as visit_no,
  case when reel_tag is null then null else previous_ticket end as previous_ticket,
  case when reel_tag is null then null else previous_on end as previous_on,
  coalesce(months_since_service,
    case when reel_tag is null then null else date_diff('day', previous_on, received_on) / 30.4375 end) as months,
  case
    when months_since_service is not null then 'written'
    when reel_tag is not null and previous_on is not null then 'from the visit before'
  end as months_from,
  water, salt_days, use_days, rinse, came_in, coalesce(came_in_guessed, false) as came_in_guessed,
  case when came_in = 'planned' then 'planned' when came_in is not null then 'complaint' end as opening,
  job, complaint, technician, batch, labour_min, parts_wait_days, coalesce(warranty, false) as warranty, outcome,
  labour_charge, parts_charge, note, import_no, source_file, source_line
from in_order;
