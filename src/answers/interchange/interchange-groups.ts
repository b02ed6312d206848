/** What decides whether two parts are the same thing. */
export interface PartIdentity {
  readonly part_no: string;
  readonly name: string | null;
  readonly family: string | null;
  readonly size: string | null;
  readonly material: string | null;
  readonly replaces: string | null;
}

/** Group of one part number; `refused` is the reason why the line cannot be planned, else null. */
export interface InterchangeRow {
  readonly part_no: string;
  readonly interchange: string;
  readonly refused: string | null;
}
