/** Plated masses at which licence categories B and C1 end: Directive 2006/126/EC; national rules differ. Kilograms. */
export const CATEGORY_B_KG = 3500;
export const CATEGORY_C1_KG = 7500;
