/**
 * A job with its kind of reel, as one name.
 *
 * @example
 * jobName({ job: "full service", reel_kind: "fly" }); // => "full service, fly"
 */
export const jobName = (of: { readonly job: string | null; readonly reel_kind: string | null }): string =>
  [of.job ?? "job not written", of.reel_kind].filter((word) => word !== null).join(", ");
