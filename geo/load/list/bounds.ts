/** What a load list may hold: its schema keeps to these, and so do the fields of the window. */

/** A list this long was made by a program. */
export const ITEMS_MAX = 300;
export const ITEM_NAME_LONGEST = 200;
/** No thing on a motorhome weighs more, nor lies farther from its front axle, either way. */
export const ITEM_KG_MOST = 20_000;
export const ITEM_X_MOST_M = 20;
export const ITEM_LITRES_MOST = 5000;
