/** Differences below this are noise of binary fractions, not masses. Kilograms. */
export const NOISE_KG = 1e-6;
