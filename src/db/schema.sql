-- The shop's rows as they came in, and the trade's lists. Everything else is derived from these.
create schema if not exists ledger;
create or replace table ledger.imports (id varchar);
create or replace table ledger.tickets (
  ticket_no varchar, received_on date, finished_on date, maker varchar, model varchar, reel_kind varchar, serial varchar,
  water varchar, salt_days double, use_days double, months_since_service double, rinse varchar, came_in varchar, job varchar,
  complaint varchar, technician varchar, batch varchar, labour_min double, parts_wait_days double, warranty boolean,
  outcome varchar, labour_charge double, parts_charge double, note varchar,
  came_in_guessed boolean, came_as integer, import_no integer, source_file varchar, source_line integer, row_key varchar
);
create or replace table ledger.findings (
  ticket_no varchar, position varchar, part_no varchar, mode varchar, grade integer, action varchar, routine boolean, qty integer,
  unit_cost double, minutes double, note varchar, size varchar, read_from varchar, rule varchar, confidence double,
  of_version varchar, import_no integer, source_file varchar, source_line integer, row_key varchar
);
create or replace table ledger.models (
  maker varchar, model varchar, reel_kind varchar, sealed boolean, tier varchar, new_price double, discontinued_on date,
  import_no integer, source_file varchar, source_line integer, row_key varchar
);
create or replace table ledger.parts (
  part_no varchar, name varchar, family varchar, supplier varchar, unit_cost double, pack_qty integer, min_order_qty integer,
  lead_days double, lead_days_sd double, on_hand double, on_order double, due_on date, size varchar, material varchar,
  replaces varchar, essential boolean,
  import_no integer, source_file varchar, source_line integer, row_key varchar
);
create or replace table ledger.fits (
  maker varchar, model varchar, position varchar, part_no varchar, qty integer,
  import_no integer, source_file varchar, source_line integer, row_key varchar
);
create or replace table ledger.suppliers (
  supplier varchar, order_cost double, min_order_value double, lead_days double, lead_days_sd double, review_days double,
  import_no integer, source_file varchar, source_line integer, row_key varchar
);
create or replace table ledger.orders (
  order_no varchar, supplier varchar, part_no varchar, qty integer, ordered_on date, arrived_on date, unit_cost double,
  line_no integer, import_no integer, source_file varchar, source_line integer, row_key varchar
);
-- What the owner decided: names that are one, and rows of one ticket number (key: the number without its spelling).
create schema if not exists decided;
create or replace table decided.names (maker varchar, model varchar, to_maker varchar, to_model varchar);
create or replace table decided.tickets (ticket_no varchar, row_key varchar, verdict varchar);
-- A number without what differs only in writing: r 1051, R-1051, R1051 and R-1O51 are one. The usual form (letters, dash, digits) needs no
-- replacing by patterns, which takes most of the time.
create or replace macro number_key(written) as case
  when regexp_full_match(written, '[A-Za-z]+-[0-9]+(-[0-9]+)*')
    then replace(upper(left(written, strpos(written, '-') - 1) || substr(written, strpos(written, '-') + 1)), 'O', '0')
  else replace(upper(regexp_replace(regexp_replace(written, '(^|[A-Za-z])[^A-Za-z0-9]+|[^A-Za-z0-9]+($|[A-Za-z])', '\1\2', 'g'), '[^A-Za-z0-9]+', '-', 'g')), 'O', '0')
end;
create or replace table position_list (
  position varchar, name varchar, group_code varchar, group_name varchar, family varchar, optional boolean,
  salt_class integer, criticality varchar
);
create or replace table coverage (reel_kind varchar, job varchar, position varchar, level varchar, not_tier varchar);
create or replace table interchange (part_no varchar, interchange varchar, refused varchar);
create or replace table suspected (size_or_part varchar, supplier varchar, from_date date, to_date date);
-- By which grade tables are still to be derived, see `3-put-off.sql`; no row when none are.
create or replace table put_off (failure_grade integer);
