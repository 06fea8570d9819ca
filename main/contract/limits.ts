/** Largest GPX file read, bytes: a 24-hour recording at 1 Hz with every extension is about 50 MB. */
export const GPX_MAX_BYTES = 64 * 1024 * 1024;
