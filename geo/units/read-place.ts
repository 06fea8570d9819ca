/** A place as somebody typed it; degrees, WGS 84. */
export type TypedPlace =
  | { readonly lat: number; readonly lon: number }
  /** two numbers that are no place, in a sentence */
  | { readonly problem: string };

/** Edges of a map, degrees. */
interface Bounds {
  readonly south: number;
  readonly north: number;
  readonly west: number;
  readonly east: number;
}

/** A number with its sign or the letter of its side, before or behind it. */
const NUMBER = String.raw`([NSEW])?\s*([-+−]?\d{1,3}(?:[.,]\d{1,12})?)\s*°?\s*([NSEWO])?`;
const PAIR = new RegExp(String.raw`^\s*${NUMBER}\s*(?:[;,/]\s*|\s)\s*${NUMBER}\s*$`, 'i');

/**
 * Reads coordinates: `54.1, 9.2`, `54.1 9.2`, `54,1; 9,2`, `N 54.1 E 9.2`. Latitude comes first unless letters say
 * otherwise.
 * @param map what is open: a place off it that lies on it when turned round was most likely typed the wrong way round
 * @returns undefined for what does not look like coordinates: a name
 */
export function readPlaceText(text: string, map?: Bounds): TypedPlace | undefined {
  const found = PAIR.exec(text);
  if (!found) return undefined;
  const [, before1, number1, after1, before2, number2, after2] = found;
  const side1 = before1 ?? after1;
  // between two numbers a letter belongs to the second where the first has one before it
  const side2 = before2 ?? after2 ?? (before1 === undefined ? undefined : after1);
  const first = numberOf(number1!, side1);
  const second = numberOf(number2!, side2);
  const turned = isEastWest(side1) || isNorthSouth(side2);
  const lettered = (side1 ?? side2) !== undefined;
  const [lat, lon] = turned ? [second, first] : [first, second];
  if (Math.abs(lat) > 90 || Math.abs(lon) > 180) return { problem: sayNoPlace(lat, lon) };
  if (!lettered && map && !isOn(map, lat, lon) && isOn(map, lon, lat))
    return { problem: saySwapped(lat, lon) };
  return { lat, lon };
}

function numberOf(text: string, side: string | undefined): number {
  const value = Number(text.replace(',', '.').replace('−', '-'));
  return /^[SW]$/i.test(side ?? '') ? -Math.abs(value) : value;
}

const isEastWest = (side: string | undefined): boolean => /^[EWO]$/i.test(side ?? '');
const isNorthSouth = (side: string | undefined): boolean => /^[NS]$/i.test(side ?? '');

function isOn({ south, north, west, east }: Bounds, lat: number, lon: number): boolean {
  return lat >= south && lat <= north && lon >= west && lon <= east;
}

function sayNoPlace(lat: number, lon: number): string {
  if (Math.abs(lat) <= 180 && Math.abs(lon) <= 90)
    return `${lat}, ${lon} has the longitude first. Type the latitude first: ${lon}, ${lat}.`;
  return `${lat}, ${lon} is no place on Earth: a latitude lies between -90 and 90, a longitude between -180 and 180.`;
}

function saySwapped(lat: number, lon: number): string {
  return `${lat}, ${lon} lies off the open map, but ${lon}, ${lat} lies on it. Type the latitude first.`;
}
