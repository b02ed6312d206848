import { BENCH_HOURS_SETTING, benchHoursText, NO_HOURS, readBenchHours, type BenchHours } from "../../answers/bench-load/bench-hours.ts";
import { BENCH_CALENDAR_SETTING, closuresText, readClosures, type Closure } from "../../answers/season/bench-calendar.ts";
import { session } from "../../session.svelte.ts";

type BenchTime = { readonly hours: BenchHours; readonly closures: readonly Closure[] };

/** The bench's hours and closed days as the owner wrote them, while the room is open. */
export class BenchMemory {
  /** Null until read. */
  settings = $state.raw<BenchTime | null>(null);
  faults = $state.raw<readonly string[]>([]);
  /** What stood there before the last change, to go back to, and what was done. */
  before = $state.raw<{ readonly settings: BenchTime; readonly did: string } | null>(null);

  async recall(): Promise<void> {
    const kept = await session.consult(async (_, ledger) => [await ledger.setting(BENCH_HOURS_SETTING), await ledger.setting(BENCH_CALENDAR_SETTING)] as const);
    const hours = readBenchHours(kept[0]), calendar = readClosures(kept[1]);
    this.settings = { hours: hours.hours, closures: calendar.closures };
    this.faults = [...hours.faults, ...calendar.faults];
  }

  /** @throws {RangeError} if hours or days cannot be; then nothing is changed */
  async keep(settings: BenchTime, did: string): Promise<void> {
    const before = this.settings, hours = benchHoursText(settings.hours), calendar = closuresText(settings.closures);
    await session.consult(async (_, ledger) => {
      await ledger.keepSetting(BENCH_HOURS_SETTING, hours);
      await ledger.keepSetting(BENCH_CALENDAR_SETTING, calendar);
    });
    this.settings = { hours: readBenchHours(hours).hours, closures: readClosures(calendar).closures };
    this.before = did === "" || before === null ? null : { settings: before, did };
  }

  keepHours(hours: BenchHours, did: string): Promise<void> { return this.keep({ hours, closures: this.settings?.closures ?? [] }, did); }
  keepClosures(closures: readonly Closure[], did: string): Promise<void> { return this.keep({ hours: this.settings?.hours ?? NO_HOURS, closures }, did); }
  async undo(): Promise<void> { if (this.before) await this.keep(this.before.settings, ""); }
}
