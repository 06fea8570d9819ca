import { feature, iso1A2Code } from '@rapideditor/country-coder';
import { leastWhere } from '../earth/bisect.ts';

/** A span of a drive within one country; undefined at sea. Metres along the drive. */
export interface CountrySpan {
  readonly fromM: number;
  readonly toM: number;
  readonly country: string | undefined;
}

/** Positions of a drive in driving order, degrees, with their distance along it in metres; same length each. */
export interface DrivePlaces {
  readonly lat: ArrayLike<number>;
  readonly lon: ArrayLike<number>;
  readonly atM: ArrayLike<number>;
}

/** Looking the country up costs some 8 µs, so it is asked once per this distance and halved at a border. */
const STEP_M = 250;

/** Wikidata id under which the border data keep Wales. */
const WALES = 'Q25';

/**
 * Country of a place: ISO 3166-1 alpha-2, or `GB-WLS` for Wales, whose general limit in towns differs.
 * Territories with a code of their own (IM, JE, GP…) give that; territorial waters belong to their country,
 * the open sea to none. Degrees WGS 84; nonsense gives undefined.
 */
export function countryOf(lat: number, lon: number): string | undefined {
  if (!(Math.abs(lat) <= 90 && Math.abs(lon) <= 180)) return undefined;
  const properties = feature([lon, lat], { level: 'territory' })?.properties;
  if (properties?.id === WALES) return 'GB-WLS';
  if (properties?.isoStatus === 'official') return properties.iso1A2;
  return iso1A2Code([lon, lat], { level: 'country' }) ?? undefined;
}

/** The alpha-2 part: `GB` for `GB-WLS`. */
export function alpha2(country: string): string {
  return country.slice(0, 2);
}

/** The English name of a country: `Turkey` for `TR`; the code itself where there is no such country. */
export function countryName(country: string): string {
  return feature(alpha2(country))?.properties.nameEn ?? country;
}

/**
 * Countries along a drive, without gaps between spans, from the first position to the last.
 * A corner of another country shorter than 250 m between two look-ups can be missed.
 */
export function countriesAlong({ lat, lon, atM }: DrivePlaces): CountrySpan[] {
  const count = atM.length;
  if (count === 0) return [];
  const countryAt = (i: number) => countryOf(lat[i]!, lon[i]!);
  const spans: CountrySpan[] = [];
  let asked = 0;
  let country = countryAt(0);
  let fromM = atM[0]!;
  for (let i = 1; i < count; i++) {
    if (i < count - 1 && atM[i]! - atM[asked]! < STEP_M) continue;
    const next = countryAt(i);
    if (next !== country) {
      const borderM = atM[firstInside(asked, i, next, countryAt)]!;
      spans.push({ fromM, toM: borderM, country });
      fromM = borderM;
      country = next;
    }
    asked = i;
  }
  spans.push({ fromM, toM: atM[count - 1]!, country });
  return spans;
}

/** The least index after `out` that is in `country`, when `inside` is: halving, as if there were one border. */
function firstInside(
  out: number,
  inside: number,
  country: string | undefined,
  countryAt: (i: number) => string | undefined,
): number {
  return leastWhere(out + 1, inside, (i) => countryAt(i) === country);
}
