/** What every sheet with shares on it has to say. */
export const CAME_IN_CAUTION =
  "These are reels that came in here, not reels sold: those that never fail are not in the records, and a popular model comes in often.";
