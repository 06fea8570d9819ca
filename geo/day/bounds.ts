/** More stops than this are no day. */
export const STOPS_MOST = 50;
/** A stay of two days; what is longer begins another drive. */
export const STAY_MOST_MIN = 2880;
