import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import type { RawTags } from './raw-map.ts';

/** What a limit tag means for a vehicle, read plainly. */
export type Meaning = 'bars' | 'passes' | 'unsure';

export interface LimitRead {
  readonly subject: 'height' | 'width' | 'length' | 'mass' | 'axle';
  readonly key: string;
  readonly value: string;
  readonly means: Meaning;
}

interface Kept {
  readonly key: string;
  readonly subject: LimitRead['subject'];
  /** metres or kilograms the vehicle has */
  needs(card: VehicleCard): number;
  /** what no road has: below or above, the text is a slip (metres, kilograms); wide on purpose */
  readonly least: number;
  readonly most: number;
}

const width = (card: VehicleCard) => card.widthM;
const gross = (card: VehicleCard) => card.grossKg;

/** OSM wiki, Key:maxheight, Key:maxwidth, Key:maxlength, Key:maxweight, Key:maxweightrating, Key:maxaxleload. */
const KEPT: readonly Kept[] = [
  { key: 'maxheight', subject: 'height', needs: (card) => card.heightM + 0.05, least: 1, most: 12 },
  { key: 'maxheight:physical', subject: 'height', needs: (card) => card.heightM + 0.05, least: 1, most: 12 },
  { key: 'maxwidth', subject: 'width', needs: width, least: 1, most: 12 },
  { key: 'maxwidth:physical', subject: 'width', needs: width, least: 1, most: 12 },
  { key: 'maxlength', subject: 'length', needs: (card) => card.lengthM, least: 2, most: 60 },
  { key: 'maxweight', subject: 'mass', needs: gross, least: 500, most: 120_000 },
  { key: 'maxweightrating', subject: 'mass', needs: gross, least: 500, most: 120_000 },
  {
    key: 'maxaxleload',
    subject: 'axle',
    needs: ({ axleKg }) => Math.max(axleKg.front, axleKg.rear),
    least: 300,
    most: 40_000,
  },
];

/** The limits of one way in the direction driven, or of one node. */
export function limitsOn(tags: RawTags, forward: boolean | undefined, card: VehicleCard): LimitRead[] {
  return KEPT.flatMap((kept) =>
    [kept.key, ...(forward === undefined ? [] : [`${kept.key}:${forward ? 'forward' : 'backward'}`])].flatMap(
      (key) => {
        const value = tags[key];
        if (value === undefined) return [];
        // a condition may lift the plain tag: then anything may be said of it
        const lifted = Object.keys(tags).some(
          (other) => other.startsWith(kept.key) && other.endsWith(':conditional'),
        );
        const means = lifted ? 'unsure' : meaning(value, kept, card);
        return [{ subject: kept.subject, key, value, means }];
      },
    ),
  );
}

const NO_LIMIT = new Set(['none', 'unlimited', 'no', 'default', 'unsigned', 'no_sign', 'no_indications']);

function meaning(value: string, { subject, needs, least, most }: Kept, card: VehicleCard): Meaning {
  if (NO_LIMIT.has(value)) return 'passes';
  const figure = subject === 'mass' || subject === 'axle' ? kilograms(value) : metres(value);
  if (figure === undefined || figure < least || figure > most) return 'unsure';
  return figure < needs(card) - 1e-9 ? 'bars' : 'passes';
}

/** As documented: metres without a unit, `3.5 m`, `12'6"`. */
function metres(value: string): number | undefined {
  const feet = /^(\d+)'(?:(\d+)")?$/.exec(value);
  if (feet) return Number(feet[1]) * 0.3048 + Number(feet[2] ?? 0) * 0.0254;
  const plain = /^(\d+(?:\.\d+)?)(?: m)?$/.exec(value);
  return plain ? Number(plain[1]) : undefined;
}

/** As documented: tonnes without a unit, `7.5 t`, `750 kg`, `3 st` (short tons), `6000 lbs`. */
function kilograms(value: string): number | undefined {
  const found = /^(\d+(?:\.\d+)?)(?: (t|kg|st|lbs))?$/.exec(value);
  const per = { t: 1000, kg: 1, st: 907.184_74, lbs: 0.453_592_37 }[found?.[2] ?? 't'];
  return found && per ? Number(found[1]) * per : undefined;
}
