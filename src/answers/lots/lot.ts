/** A lot that fails early, or may: parts of one size (or number) and supplier fitted within one window. */
export interface LotRow {
  /** `4x7x2.5` for a bearing, else the part number. */
  readonly size_or_part: string;
  readonly supplier: string | null;
  /** First and last day of the window of fitting; both months whole. */
  readonly from: string;
  readonly to: string;
  /** First days of the months in which the window plausibly (95 %) began and ended; null where no batch is suspected. */
  readonly began: LotMonths | null;
  readonly ended: LotMonths | null;
  /** Fitted in the window and seen again within `within_days`. */
  readonly fitted: number;
  readonly failed_early: number;
  readonly share: number | null;
  /** Share to expect from fittings of the same models outside the window. */
  readonly expected_share: number | null;
  /** Chance that the worst window of all would look like this, from shuffling fittings within each model and part. */
  readonly p_value: number | null;
  readonly q_value: number | null;
  readonly verdict: "bad batch" | "perhaps, not yet sure" | "no different" | "too few";
  readonly reasons: readonly string[];
  /** Models fitted in the window, with how many of theirs failed early: a batch hits them alike, a bad model only itself. */
  readonly models: readonly LotShare[];
  /** The same by who fitted it. */
  readonly technicians: readonly LotShare[];
  /** Lot words written beside fittings of the window, most frequent first. */
  readonly lots_written: readonly string[];
  /** Reels that still carry a part of the window: fitted then, and not replaced since. */
  readonly carriers: readonly LotCarrier[];
}
/** The first day of the earliest and of the latest month. */
export interface LotMonths { readonly earliest: string; readonly latest: string }
export interface LotShare {
  readonly name: string;
  readonly fitted: number;
  readonly failed_early: number;
  /** Of the same outside the window. */
  readonly others_fitted: number;
  readonly others_failed_early: number;
}
/** A reel to call in; never with a customer's name. */
export interface LotCarrier {
  readonly serial: string;
  readonly maker: string | null;
  readonly model: string;
  readonly position: string;
  readonly position_name: string;
  readonly ticket_no: string;
  readonly fitted_on: string;
  readonly last_seen_on: string;
}

export interface Lots {
  /** Worst first. */
  readonly rows: readonly LotRow[];
  readonly within_days: number;
  readonly linked_share: number | null;
  /** Why nothing could be looked for, else empty. */
  readonly note: string;
}
