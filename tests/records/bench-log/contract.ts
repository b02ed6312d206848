import type { BenchStore, Entry } from "../../../src/records/bench-log/bench-store.ts";
import { bytes, refused, same } from "../ledger/contract.ts";

/** Opens the same bench log once more, as another window does. */
export type OpenBench = () => Promise<BenchStore>;
export interface BenchClaim { readonly claim: string; check(open: OpenBench): Promise<void> }

const valuesOf = (entries: ReadonlyMap<string, Entry> | undefined) => Object.fromEntries([...(entries ?? [])].map(([field, { value }]) => [field, value]).sort());
const picture = (seed: number) => bytes(500, seed) as Uint8Array<ArrayBuffer>;

/** What every bench log keeps to; runs in a page as well as in Node. */
export const BENCH_CONTRACT: readonly BenchClaim[] = [
  {
    claim: "what is written stands field by field, in this window and in another, and not known is not the same as never asked",
    async check(open) {
      const here = await open(), there = await open(), { id } = await here.begin({ ticket_no: "R-1" });
      await here.write(id, [{ field: "water", value: "salt", seen: 0 }, { field: "rinse", value: null, seen: 0 }]);
      await here.write(id, [{ field: "ticket_no", value: undefined, seen: 1 }]);
      for (const store of [here, there]) same(valuesOf((await store.ticket(id))?.entries), { rinse: null, water: "salt" }, "entries");
    },
  },
  {
    claim: "two windows that write different fields lose nothing, and one that writes over what it had not seen is told what stood there",
    async check(open) {
      const here = await open(), there = await open(), { id } = await here.begin({ model: "Withy 5" });
      same(await here.write(id, [{ field: "water", value: "salt", seen: 0 }]), [], "first");
      same(await there.write(id, [{ field: "rinse", value: "never", seen: 0 }]), [], "another field");
      same(await there.write(id, [{ field: "water", value: "fresh", seen: 0 }]), [{ field: "water", other: "salt" }], "the same field");
      same(await here.write(id, [{ field: "water", value: "fresh", seen: 1 }]), [], "the same value");
      same(valuesOf((await here.ticket(id))?.entries), { model: "Withy 5", rinse: "never", water: "fresh" }, "entries");
    },
  },
  {
    claim: "a finished ticket takes no more writing until it is opened again, and keeps what was written",
    async check(open) {
      const here = await open(), there = await open(), { id } = await here.begin({ model: "Withy 5" });
      await there.finish(id, "batch-7");
      await refused(here.write(id, [{ field: "water", value: "salt", seen: 0 }]), "TicketClosed");
      same((await here.ticket(id))?.batch_id, "batch-7", "import");
      await here.reopen(id);
      await here.write(id, [{ field: "water", value: "salt", seen: 0 }]);
      same(valuesOf((await there.ticket(id))?.entries), { model: "Withy 5", water: "salt" }, "entries");
    },
  },
  {
    claim: "a ticket on which another window wrote since it went in is not finished but knows its import; work alone on a ticket is done one window after the other",
    async check(open) {
      const here = await open(), there = await open(), { id } = await here.begin({ model: "Withy 5" }), steps: string[] = [];
      const same_model = (entries: ReadonlyMap<string, Entry>) => entries.get("model")?.value === "Withy 5" && entries.size === 1;
      await there.write(id, [{ field: "water", value: "salt", seen: 0 }]);
      same(await here.finish(id, "batch-7", same_model), false, "finished");
      const left = await there.ticket(id);
      same([left?.finished_at ?? null, left?.batch_id ?? null], [null, "batch-7"], "left at the bench");
      same(await here.finish(id, "batch-8", (entries) => entries.size === 2), true, "finished later");
      const slow = (store: BenchStore, name: string) => store.alone(id, async () => {
        steps.push(`${name} begins`);
        await new Promise((resolve) => setTimeout(resolve, 10));
        steps.push(`${name} ends`);
        if (name === "one") throw new TypeError("no");
      });
      await Promise.all([refused(slow(here, "one"), "TypeError"), slow(there, "two")]);
      const [first] = steps[0]?.split(" ") ?? [], other = first === "one" ? "two" : "one";
      same(steps, [`${first} begins`, `${first} ends`, `${other} begins`, `${other} ends`], "steps");
    },
  },
  {
    claim: "a photo comes back as it was, and goes with its ticket",
    async check(open) {
      const store = await open(), one = await store.begin({}), other = await store.begin({});
      const photo = await store.addPhoto(one.id, "Line roller", picture(1)), kept = await store.addPhoto(other.id, "reel", picture(2));
      same([photo.group, photo.bytes], ["Line roller", 500], "note");
      same(Array.from(await store.picture(photo)), Array.from(picture(1)), "picture");
      await store.remove(one.id);
      same([(await store.photos(one.id)).length, (await store.photos(other.id)).map(({ id }) => id)], [0, [kept.id]], "photos");
      await refused(store.picture(photo), "PhotoDamaged");
      await refused(store.addPhoto(one.id, "reel", picture(3)), "TicketClosed");
    },
  },
  {
    claim: "a copy put in the place of everything is all there is",
    async check(open) {
      const store = await open(), { id } = await store.begin({ model: "Withy 5" });
      await store.addPhoto(id, "reel", picture(4));
      const copy = await store.copy();
      await store.begin({ model: "Ombry 8" });
      await store.replaceAll(copy);
      same((await store.tickets()).map(({ entries }) => valuesOf(entries)), [{ model: "Withy 5" }], "tickets");
      same((await store.copy()).photos.map(({ picture: shown }) => Array.from(shown)), [Array.from(picture(4))], "pictures");
      await store.clear();
      same([await store.tickets(), (await store.copy()).photos], [[], []], "after clearing");
    },
  },
];
