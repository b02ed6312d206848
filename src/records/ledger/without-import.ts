import type { Ledger } from "./ledger.ts";

/**
 * The ledger as it would be without one import, whose place the next one added takes. Until then nothing is changed on the
 * disk, so that a page closed meanwhile finds the import as it was.
 */
export function withoutImport(ledger: Ledger, batch_id: string): Ledger {
  return {
    batches: async () => (await ledger.batches()).filter(({ id }) => id !== batch_id),
    rejects: () => ledger.rejects(batch_id),
    append: (batch) => ledger.append(batch, batch_id),
    payload: (batch, table) => ledger.payload(batch, table),
    replaceAll: (batch, settings) => ledger.replaceAll(batch, settings),
    alone: (work) => ledger.alone(work),
    remove: (id, settings) => ledger.remove(id, settings),
    clear: (left) => ledger.clear(left),
    settings: () => ledger.settings(),
    setting: (name) => ledger.setting(name),
    keepSetting: (name, value) => ledger.keepSetting(name, value),
    changeSetting: (name, change) => ledger.changeSetting(name, change),
    onChange: (callback) => ledger.onChange(callback),
    close: () => ledger.close(),
  };
}
