import { BENCH_HOURS_SETTING, benchHoursText, NO_HOURS, readBenchHours, type BenchHours } from "../../answers/bench-load/bench-hours.ts";
import { BENCH_CALENDAR_SETTING, closuresText, readClosures, type Closure } from "../../answers/season/bench-calendar.ts";
import { listTogether } from "../../records/ledger/changes-together.ts";
import { session } from "../../session.svelte.ts";

type BenchTime = { readonly hours: BenchHours; readonly closures: readonly Closure[] };

/** The bench's hours and closed days as the owner wrote them, while the room is open. */
export class BenchMemory {
  /** Null until read. */
  settings = $state.raw<BenchTime | null>(null);
  faults = $state.raw<readonly string[]>([]);
  /** What stood there before the last change, to go back to, and after it, and what was done. */
  before = $state.raw<{ readonly settings: BenchTime; readonly after: BenchTime; readonly did: string } | null>(null);

  async recall(): Promise<void> {
    const kept = await session.consult(async (_, ledger) => [await ledger.setting(BENCH_HOURS_SETTING), await ledger.setting(BENCH_CALENDAR_SETTING)] as const);
    const hours = readBenchHours(kept[0]), calendar = readClosures(kept[1]);
    this.settings = { hours: hours.hours, closures: calendar.closures };
    this.faults = [...hours.faults, ...calendar.faults];
  }

  /**
   * What another window wrote meanwhile stays beside it.
   *
   * @param seen what the change began with
   * @throws {RangeError} if hours or days cannot be; then nothing is changed
   */
  async keep(settings: BenchTime, did: string, seen: BenchTime | null = this.settings): Promise<void> {
    const before = seen ?? { hours: NO_HOURS, closures: [] }, calendar = readClosures(closuresText(settings.closures)).closures, hours = readBenchHours(benchHoursText(settings.hours)).hours;
    const kept = await session.consult(async (_, ledger) => [
      await ledger.changeSetting(BENCH_HOURS_SETTING, (text) => benchHoursText({ people: listTogether(before.hours.people, hours.people, readBenchHours(text).hours.people) })),
      await ledger.changeSetting(BENCH_CALENDAR_SETTING, (text) => closuresText(listTogether(before.closures, calendar, readClosures(text).closures))),
    ] as const);
    this.settings = { hours: readBenchHours(kept[0]).hours, closures: readClosures(kept[1]).closures };
    this.before = did === "" || seen === null ? null : { settings: seen, after: { hours, closures: calendar }, did };
  }

  keepHours(hours: BenchHours, did: string): Promise<void> { return this.keep({ hours, closures: this.settings?.closures ?? [] }, did); }
  keepClosures(closures: readonly Closure[], did: string): Promise<void> { return this.keep({ hours: this.settings?.hours ?? NO_HOURS, closures }, did); }
  async undo(): Promise<void> { if (this.before) await this.keep(this.before.settings, "", this.before.after); }
}
