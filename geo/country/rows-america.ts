import { COMMON_PRACTICE, cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { AMERICAN_WIDTHS, CONTINENTAL_WIDTHS } from './default-widths.ts';
import { openRoad } from './open-road.ts';
import { type CountryRule, mph } from './rule.ts';

const RIGHT = cite('right' as const, SOURCES.borderData);
const KERBS = cite({ urban: 4, rural: 9 }, SOURCES.nactoCorners);

export const UNITED_STATES: CountryRule = {
  code: 'US',
  name: 'United States',
  driveSide: RIGHT,
  unsignedHeight: cite(
    {
      leastM: 4.42,
      mainRoadsOnly: true,
      meaning:
        'On main roads kept to the federal manual no height sign means at least 14 ft 6 in (4.42 m). Parkways and old local bridges promise nothing.',
    },
    SOURCES.usUnsigned,
    'A sign’s figure may be up to 3 in less than the clearance; nothing is added to it.',
  ),
  legalHeightM: cite(4.11, SOURCES.usHeight, 'By state; 13 ft 6 in is the lowest.'),
  massSign: cite('actual', SOURCES.usMass, 'Weight including load; the plate is tested all the same.'),
  goodsSigns: cite('not known', FROM_MEMORY, 'Truck and commercial vehicle signs differ by state and town.'),
  widthSign: cite('body', FROM_MEMORY),
  widths: cite(AMERICAN_WIDTHS, SOURCES.usLane, 'Other classes are judgement; ± 0.5 m.'),
  kerbRadiusM: KERBS,
  urbanKmh: cite(mph(25), SOURCES.speedData, 'By state: 25 in 17, 30 in 15, 35 in 6.'),
  livingStreetKmh: cite(mph(15), FROM_MEMORY),
  bandsBy: cite('plated', FROM_MEMORY),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: mph(55), dual: mph(65), expressway: mph(55), motorway: mph(65) }),
        SOURCES.speedData,
        'By state and always posted: 55 in 30 states, more or less elsewhere. No national limit by mass for motorhomes.',
      ),
    },
  ],
};

export const CANADA: CountryRule = {
  code: 'CA',
  name: 'Canada',
  driveSide: RIGHT,
  unsignedHeight: cite({ meaning: 'No height sign promises no clearance.' }, FROM_MEMORY),
  legalHeightM: cite(4.15, SOURCES.ontarioHeight),
  massSign: cite('actual', FROM_MEMORY, 'The plate is tested all the same.'),
  goodsSigns: cite('not known', FROM_MEMORY, 'Truck signs differ by province and town.'),
  widthSign: cite('body', FROM_MEMORY),
  widths: cite(AMERICAN_WIDTHS, COMMON_PRACTICE, 'Judgement; ± 0.5 m.'),
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.speedData),
  livingStreetKmh: cite(30, FROM_MEMORY),
  bandsBy: cite('plated', FROM_MEMORY),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 80, dual: 80, expressway: 80, motorway: 100 }),
        SOURCES.speedData,
        'By province: 80 in seven, 90 in four. No limit by mass for motorhomes.',
      ),
    },
  ],
};

export const BRAZIL: CountryRule = {
  ...CANADA,
  code: 'BR',
  name: 'Brazil',
  legalHeightM: cite(4.4, FROM_MEMORY),
  massSign: cite('plated', FROM_MEMORY, 'The stricter reading.'),
  widthSign: cite('with mirrors', FROM_MEMORY, 'The stricter reading.'),
  urbanKmh: cite(40, SOURCES.speedData, 'By class of street, 30 to 60 km/h.'),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 90, motorway: 90 }),
        SOURCES.speedData,
        'The figures for motorhomes; cars 100 and 110.',
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
    {
      overKg: 0,
      limits: cite(openRoad({ rural: 80, dual: 90, expressway: 90, motorway: 110 }), FROM_MEMORY),
    },
    {
      overKg: 3500,
      limits: cite(openRoad({ rural: 80, dual: 80, expressway: 80, motorway: 80 }), FROM_MEMORY),
    },
  ],
};
