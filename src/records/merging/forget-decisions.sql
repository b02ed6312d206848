-- Empties what was decided, before it is filled from the ledger.
delete from decided.names;
delete from decided.tickets;
