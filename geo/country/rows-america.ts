import { COMMON_PRACTICE, cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { AMERICAN_WIDTHS, CONTINENTAL_WIDTHS } from './default-widths.ts';
import { type CountryRule, mph } from './rule.ts';

const RIGHT = cite('right' as const, FROM_MEMORY);
const KERBS = cite({ urban: 4, rural: 9 }, SOURCES.nactoCorners);

export const UNITED_STATES: CountryRule = {
  code: 'US',
  name: 'United States',
  driveSide: RIGHT,
  unsignedHeight: cite(
    { meaning: 'No national figure: no height sign promises no clearance.' },
    SOURCES.usHeight,
  ),
  legalHeightM: cite(4.11, SOURCES.usHeight, 'By state; 13 ft 6 in is the lowest.'),
  massSign: cite('actual', SOURCES.usMass, 'Weight including load; the plate is tested all the same.'),
  goodsSigns: cite('not known', FROM_MEMORY, 'Truck and commercial vehicle signs differ by state and town.'),
  widthSign: cite('body', FROM_MEMORY),
  widths: cite(AMERICAN_WIDTHS, SOURCES.usLane, 'Other classes are judgement; ± 0.5 m.'),
  kerbRadiusM: KERBS,
  urbanKmh: cite(mph(25), FROM_MEMORY, 'By state, 20 to 35 mph.'),
  livingStreetKmh: cite(mph(15), FROM_MEMORY),
  bandsBy: cite('plated', FROM_MEMORY),
  bands: [
    {
      overKg: 0,
      limits: cite(
        { rural: mph(55), dual: mph(65), expressway: mph(55), motorway: mph(65) },
        FROM_MEMORY,
        'By state and always posted; a low middle is taken. No national limit by mass for motorhomes.',
      ),
    },
  ],
};

export const CANADA: CountryRule = {
  code: 'CA',
  name: 'Canada',
  driveSide: RIGHT,
  unsignedHeight: cite({ meaning: 'No height sign promises no clearance.' }, FROM_MEMORY),
  legalHeightM: cite(4.15, FROM_MEMORY, 'Most provinces.'),
  massSign: cite('actual', FROM_MEMORY, 'The plate is tested all the same.'),
  goodsSigns: cite('not known', FROM_MEMORY, 'Truck signs differ by province and town.'),
  widthSign: cite('body', FROM_MEMORY),
  widths: cite(AMERICAN_WIDTHS, COMMON_PRACTICE, 'Judgement; ± 0.5 m.'),
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.osmSpeeds),
  livingStreetKmh: cite(30, FROM_MEMORY),
  bandsBy: cite('plated', FROM_MEMORY),
  bands: [
    {
      overKg: 0,
      limits: cite(
        { rural: 80, dual: 80, expressway: 80, motorway: 100 },
        FROM_MEMORY,
        'By province. No limit by mass for motorhomes.',
      ),
    },
  ],
};

/** For every country without a row, and for places at sea. Cautious figures, each said to be a guess. */
export const OTHER_COUNTRY: CountryRule = {
  code: 'other',
  name: 'a country without a row of its own',
  driveSide: RIGHT,
  unsignedHeight: cite({ meaning: 'No height sign promises no clearance.' }, FROM_MEMORY),
  legalHeightM: cite(4.0, FROM_MEMORY, 'The commonest figure.'),
  massSign: cite('plated', FROM_MEMORY, 'The stricter reading.'),
  goodsSigns: cite('not known', FROM_MEMORY),
  widthSign: cite('with mirrors', FROM_MEMORY, 'The stricter reading.'),
  widths: cite(CONTINENTAL_WIDTHS, COMMON_PRACTICE, 'Judgement; ± 0.5 m.'),
  kerbRadiusM: cite({ urban: 3, rural: 8 }, COMMON_PRACTICE, 'Judgement.'),
  urbanKmh: cite(50, FROM_MEMORY),
  livingStreetKmh: cite(20, FROM_MEMORY),
  bandsBy: cite('plated', FROM_MEMORY),
  bands: [
    { overKg: 0, limits: cite({ rural: 80, dual: 90, expressway: 90, motorway: 110 }, FROM_MEMORY) },
    { overKg: 3500, limits: cite({ rural: 80, dual: 80, expressway: 80, motorway: 80 }, FROM_MEMORY) },
  ],
};
