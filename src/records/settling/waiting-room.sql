-- The waiting room for the rows of one import, empty: per table the rows, and beside them what became of those that are
-- not new.
create schema if not exists staging;
create or replace table staging.tickets as
select * exclude (import_no), 0 as file_no
from ledger.tickets
limit 0;
create or replace table staging.findings as
select * exclude (import_no), 0 as file_no
from ledger.findings
limit 0;
create or replace table staging.models as
select * exclude (import_no), 0 as file_no
from ledger.models
limit 0;
create or replace table staging.parts as
select * exclude (import_no), 0 as file_no
from ledger.parts
limit 0;
create or replace table staging.fits as
select * exclude (import_no), 0 as file_no
from ledger.fits
limit 0;
create or replace table staging.suppliers as
select * exclude (import_no), 0 as file_no
from ledger.suppliers
limit 0;
create or replace table staging.orders as
select * exclude (import_no), 0 as file_no
from ledger.orders
limit 0;
create or replace table staging.tickets_fate (file_no integer, source_line integer, row_key varchar, fate varchar);
create or replace table staging.numbers_again (ticket_no varchar, row_key varchar, file_no integer, source_line integer);
create or replace table staging.findings_fate (file_no integer, source_line integer, row_key varchar, fate varchar, ticket_no varchar);
create or replace table staging.models_fate (file_no integer, source_line integer, fate varchar);
create or replace table staging.parts_fate (file_no integer, source_line integer, fate varchar);
create or replace table staging.fits_fate (file_no integer, source_line integer, fate varchar);
create or replace table staging.suppliers_fate (file_no integer, source_line integer, fate varchar);
create or replace table staging.orders_fate (file_no integer, source_line integer, fate varchar);
create or replace table staging.moved_lines (file_no integer, source_line integer, from_line integer);
create or replace table staging.sources (file_no integer, source_line integer, from_file varchar, from_line integer, of_version varchar, from_key varchar);
