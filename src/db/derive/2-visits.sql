-- One row per ticket, with what the model list knows of the reel and the visit of the same serial before it. `shop_no` tells shops apart
-- where several are pooled; one's own shop is 0.
create or replace table visits as
with named as materialized (
  select t.* replace (if(d.model is null, t.maker, d.to_maker) as maker, coalesce(d.to_model, t.model) as model), (row_number() over ())::integer as row_no
  from tickets t
  left join decided.names d on d.model = t.model and d.maker is not distinct from t.maker
), tagged as (
  select row_no, ticket_no, received_on, maker, model, serial,
    -- What reads like a person's name links nothing: two customers may bear it. To replace by a pattern takes five times as long as to look for it.
    case
      when regexp_matches(serial, '(?i)^(mr|mrs|ms|dr)\b') or regexp_full_match(serial, '[A-Z]([a-z]+|\.) +[A-Z][a-z]+') then null
      when regexp_matches(replace(serial, '-', ''), '[^A-Za-z0-9]') then nullif(replace(upper(regexp_replace(serial, '[^A-Za-z0-9]+', '', 'g')), 'O', '0'), '')
      else nullif(replace(upper(replace(serial, '-', '')), 'O', '0'), '')
    end as reel_tag
  from named
), in_order as (
  select row_no, reel_tag is not null as known,
    lag(ticket_no) over reel as previous_ticket,
    lag(received_on) over reel as previous_on,
    row_number() over reel as nth,
    first_value(serial) over reel as first_serial
  from tagged
  window reel as (partition by maker, model, reel_tag order by received_on, ticket_no)
), numbered as (
  -- Few columns are put in order, the others found again by number.
  select row_no, (row_number() over ())::integer as visit, known, if(known, first_serial, null) as first_serial, if(known, nth, null) as visit_no,
    if(known, previous_ticket, null) as previous_ticket, if(known, previous_on, null) as previous_on
  from in_order
)
select n.visit, 0::smallint as shop_no, t.ticket_no, t.received_on, t.finished_on,
  case
    when t.outcome = 'waiting' then false
    else t.finished_on is not null or t.labour_min is not null or t.outcome is not null
  end as finished,
  t.maker, t.model, coalesce(t.reel_kind, m.reel_kind) as reel_kind, m.sealed, m.tier, m.new_price,
  if(n.known, n.first_serial, t.serial) as serial, n.visit_no, n.previous_ticket, n.previous_on,
  coalesce(t.months_since_service, date_diff('day', n.previous_on, t.received_on) / 30.4375) as months,
  case
    when t.months_since_service is not null then 'written'
    when n.previous_on is not null then 'from the visit before'
  end as months_from,
  t.water, t.salt_days, t.use_days, t.rinse, t.came_in, coalesce(t.came_in_guessed, false) as came_in_guessed,
  case when t.came_in = 'planned' then 'planned' when t.came_in is not null then 'complaint' end as opening,
  t.job, t.complaint, t.technician, t.batch, t.labour_min, t.parts_wait_days, coalesce(t.warranty, false) as warranty, t.outcome,
  t.labour_charge, t.parts_charge, t.note, t.import_no, t.source_file, t.source_line
from numbered n
join named t using (row_no)
left join models m on m.model = t.model and m.maker is not distinct from t.maker;
