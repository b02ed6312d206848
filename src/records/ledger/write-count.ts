let under_way = 0;

/** Counts a writing from when it is asked for until it is on the disk or has failed. */
export async function counted<T>(write: () => Promise<T>): Promise<T> {
  under_way += 1;
  try {
    return await write();
  } finally {
    under_way -= 1;
  }
}

/** How many writings of this window, to records and bench log, are not on the disk yet. */
export const writesUnderWay = (): number => under_way;
