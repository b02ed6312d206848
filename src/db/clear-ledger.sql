-- Empties the tables of imported rows, before they are filled from the ledger.
delete from ledger.imports;
delete from ledger.tickets;
delete from ledger.findings;
delete from ledger.models;
delete from ledger.parts;
delete from ledger.fits;
delete from ledger.suppliers;
delete from ledger.orders;
