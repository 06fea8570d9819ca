/** Metres in an inch, a foot and a statute mile: exact, by the international yard and pound agreement of 1959. */
export const METRES_PER_INCH = 0.0254;
export const METRES_PER_FOOT = 0.3048;
export const METRES_PER_MILE = 1609.344;

/** Kilograms in a pound, exact by the same agreement. */
export const KG_PER_POUND = 0.45359237;

/** km/h in a statute mile an hour, and in a knot (a nautical mile of 1852 m an hour): exact. */
export const KMH_PER_MPH = METRES_PER_MILE / 1000;
export const KMH_PER_KNOT = 1.852;
