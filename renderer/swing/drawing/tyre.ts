export const TYRE_LONG_M = 0.66;
export const TYRE_WIDE_M = 0.22;

/** A tyre about its own middle, for a path's `d` in metres. */
export const TYRE_PATH = `M${-TYRE_LONG_M / 2} ${-TYRE_WIDE_M / 2}h${TYRE_LONG_M}v${TYRE_WIDE_M}h${-TYRE_LONG_M}Z`;
