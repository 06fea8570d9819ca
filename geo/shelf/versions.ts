/** Version of the bytes. A part of another version is not read; it is made anew from its source. */
export const FORMAT_VERSION = 1;
/** Version of what is taken from a source (geo/roads/keep.ts, the layers' rules): raised when it grows. */
export const CHOICE_VERSION = 2;
