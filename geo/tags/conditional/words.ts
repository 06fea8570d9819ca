/**
 * The words a condition may consist of, lower case. Documented ones from the OSM wiki (Conditional restrictions,
 * Key:access); the rest is what mappers write for them.
 */

/** Access to something along the road: a drive that starts or ends there has it, one passing through has not. */
export const GOING_THERE: ReadonlySet<string> = new Set([
  'destination',
  'customers',
  'guests',
  'visitors',
  'access',
]);

/** A standing or an errand that a hirer has only by arrangement with someone there. */
export const BY_ARRANGEMENT: ReadonlySet<string> = new Set(
  (
    'delivery loading unloading loading_unloading agricultural forestry private permit permit_holder resident ' +
    'residents local staff employees members official military service services maintenance marked designated ' +
    'permissive disabled school students'
  ).split(' '),
);

/** What a motorhome is, whatever its size. */
export const IS_MOTORHOME: ReadonlySet<string> = new Set(['motorhome', 'motor_vehicle', 'vehicle']);

/** Classes a motorhome falls into under some laws or signs and not under others. */
export const PERHAPS_MOTORHOME: ReadonlySet<string> = new Set([
  'motorcar',
  'hov',
  'carpool',
  'double_tracked_motor_vehicle',
]);

/** Goods vehicles: their signs bind a heavy motorhome in some countries. */
export const GOODS: ReadonlySet<string> = new Set(['hgv', 'goods']);

/** What a motorhome is not. */
export const NOT_MOTORHOME: ReadonlySet<string> = new Set(
  (
    'hgv_articulated lhv bus psv tourist_bus coach minibus school_bus share_taxi taxi trailer caravan bicycle moped ' +
    'mofa motorcycle speed_pedelec foot horse carriage tractor agricultural_vehicle atv snowmobile emergency ambulance ' +
    'tram train trolleybus light_rail ski wheelchair golf_cart'
  ).split(' '),
);

export const CIRCUMSTANCES: ReadonlySet<string> = new Set(
  'wet rain dry snow ice fog wind winter summer spring autumn flashing low_visibility smog high_water flood fire_danger'.split(
    ' ',
  ),
);

/** Slips met in real data, each with the one word it can stand for. */
export const MISSPELT: Readonly<Record<string, string>> = {
  agriculture: 'agricultural',
  agricultura: 'agricultural',
  agricutural: 'agricultural',
  deliviery: 'delivery',
  deliveries: 'delivery',
  destintation: 'destination',
  permits: 'permit',
  permit_holders: 'permit_holder',
  busses: 'bus',
  buses: 'bus',
  trailers: 'trailer',
  caravans: 'caravan',
  motorhomes: 'motorhome',
};

/** Values that say what is allowed and are never a condition. */
export const PLAIN_VALUES: ReadonlySet<string> = new Set(['yes', 'no', 'none', 'default', 'unknown']);
