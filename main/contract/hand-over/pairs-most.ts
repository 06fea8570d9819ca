/** More pairs nobody hands over at a time. */
export const PAIRS_MOST = 500;
