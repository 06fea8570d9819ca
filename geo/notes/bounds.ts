/** Longest text of a note and longest initials, in characters. */
export const SAY_MOST = 500;
export const BY_MOST = 6;

/** What a figure of a note may be, metres and kilograms: beyond that it is a slip. Common practice, no source. */
export const NOTE_FIGURES = {
  heightM: { least: 0.5, most: 20 },
  widthM: { least: 0.5, most: 50 },
  massKg: { least: 100, most: 200_000 },
} as const;
