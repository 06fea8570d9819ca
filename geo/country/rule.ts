import { KMH_PER_MPH } from '../units/exact.ts';
import type { Cited } from './cited.ts';

/**
 * Kinds of road that default speed limits tell apart. `expressway` is a road signed for motor traffic only
 * (`motorroad=yes`) with one carriageway, `dualExpressway` one with two.
 */
export type SpeedClass = 'rural' | 'dual' | 'expressway' | 'dualExpressway' | 'motorway';

/** km/h; `none` is a road without a general limit, which is not the same as an unknown one. */
export type Limit = number | 'none';

/** General limits outside built-up areas for one band of masses. */
export type OpenRoadLimits = Readonly<Record<SpeedClass, Limit>>;

/** Limits for vehicles over a mass, up to the next band. */
export interface SpeedBand {
  readonly overKg: number;
  readonly limits: Cited<OpenRoadLimits>;
}

/** Classes that default widths tell apart; see `widthClassOf`. */
export type WidthClass =
  | 'motorway'
  | 'trunk'
  | 'primary'
  | 'secondary'
  | 'tertiary'
  | 'unclassified'
  | 'residential'
  | 'service'
  | 'track';

/** Metres. `carriagewayM` is kerb to kerb, both directions; one direction's on a motorway. */
export interface WidthDefaults {
  readonly laneM: Readonly<Record<WidthClass, number>>;
  readonly carriagewayM: Readonly<Record<WidthClass, number>>;
}

export interface UnsignedHeight {
  /** least clearance that a public road without a height sign promises; absent: it promises none */
  readonly leastM?: number;
  /** the promise holds on motorways and main roads alone */
  readonly mainRoadsOnly?: true;
  readonly meaning: string;
}

/** What one country's law and habits mean for a motor caravan. Lengths in metres, speeds in km/h. */
export interface CountryRule {
  /** ISO 3166-1 alpha-2, `other` for the fallback */
  readonly code: CountryCode | 'other';
  readonly name: string;
  readonly driveSide: Cited<'left' | 'right'>;
  readonly unsignedHeight: Cited<UnsignedHeight>;
  /** absent value: no national limit */
  readonly legalHeightM: Cited<number | undefined>;
  /** what the plain mass sign (OSM `maxweight`) compares; the plate is tested in any case */
  readonly massSign: Cited<'plated' | 'actual'>;
  /** whether signs and tags for goods vehicles (`hgv=no`, `maxweightrating:hgv`…) bind a motor caravan over 3.5 t plated */
  readonly goodsSigns: Cited<'bind' | 'do not bind' | 'not known'>;
  /** what a width sign (OSM `maxwidth`) is held against */
  readonly widthSign: Cited<'body' | 'with mirrors'>;
  readonly widths: Cited<WidthDefaults>;
  readonly kerbRadiusM: Cited<{ readonly urban: number; readonly rural: number }>;
  readonly urbanKmh: Cited<number>;
  readonly livingStreetKmh: Cited<number>;
  /** which mass the bands go by */
  readonly bandsBy: Cited<'plated' | 'unladen'>;
  /** lightest first, the first over 0 kg */
  readonly bands: readonly [SpeedBand, ...SpeedBand[]];
  /** other general limits by `highway` value, for every mass (the band still caps them) */
  readonly ruralByHighway?: Cited<Readonly<Record<string, number>>>;
}

export const COUNTRY_CODES = [
  'GB',
  'IE',
  'FR',
  'DE',
  'ES',
  'IT',
  'NL',
  'BE',
  'AT',
  'CH',
  'LI',
  'LU',
  'PT',
  'DK',
  'SE',
  'NO',
  'FI',
  'PL',
  'CZ',
  'SK',
  'HU',
  'SI',
  'HR',
  'GR',
  'MT',
  'US',
  'CA',
  'BR',
  'AU',
  'NZ',
] as const;
export type CountryCode = (typeof COUNTRY_CODES)[number];

/** Statute miles an hour in km/h, exact. */
export function mph(value: number): number {
  return value * KMH_PER_MPH;
}
