import { COMMON_PRACTICE, cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { CONTINENTAL_WIDTHS } from './default-widths.ts';
import { openRoad } from './open-road.ts';
import type { CountryRule } from './rule.ts';

const RIGHT = cite('right' as const, SOURCES.borderData);
const WIDTHS = cite(CONTINENTAL_WIDTHS, COMMON_PRACTICE, 'Judgement; ± 0.5 m.');
const KERBS = cite({ urban: 3, rural: 8 }, COMMON_PRACTICE, 'Judgement; town 1 to 6 m, country 4 to 12 m.');
const FOUR_METRES = {
  leastM: 4.0,
  meaning: 'On a public road no height sign means that a vehicle 4.00 m high passes.',
};

export const SPAIN: CountryRule = {
  code: 'ES',
  name: 'Spain',
  driveSide: RIGHT,
  unsignedHeight: cite(FOUR_METRES, SOURCES.spainHeight),
  legalHeightM: cite(4.0, SOURCES.directive96),
  massSign: cite('actual', FROM_MEMORY, 'R-201; the plate is tested all the same.'),
  goodsSigns: cite('do not bind', SOURCES.spainGoods),
  widthSign: cite('body', FROM_MEMORY),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(30, SOURCES.spainUrban, 'One lane each way; 50 km/h with two or more lanes each way.'),
  livingStreetKmh: cite(20, SOURCES.spainUrban),
  bandsBy: cite('plated', SOURCES.spainSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 90, motorway: 120 }),
        SOURCES.spainSpeeds,
        'An autovía is mapped as a motorway and counts as one.',
      ),
    },
    { overKg: 3500, limits: cite(openRoad({ rural: 80, motorway: 90 }), SOURCES.spainSpeeds) },
  ],
};

export const ITALY: CountryRule = {
  code: 'IT',
  name: 'Italy',
  driveSide: RIGHT,
  unsignedHeight: cite(FOUR_METRES, SOURCES.italyHeight),
  legalHeightM: cite(4.0, SOURCES.directive96),
  massSign: cite('actual', FROM_MEMORY, 'Fig. 68; the plate is tested all the same.'),
  goodsSigns: cite('do not bind', SOURCES.italyGoods),
  widthSign: cite('body', FROM_MEMORY),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.italySpeeds),
  livingStreetKmh: cite(30, FROM_MEMORY),
  bandsBy: cite('plated', SOURCES.italySpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 90, dual: 90, expressway: 110, motorway: 130 }),
        SOURCES.italySpeeds,
        '110 on main roads signed for motor traffic (strada extraurbana principale); other dual carriageways 90.',
      ),
    },
    {
      overKg: 3500,
      limits: cite(
        openRoad({ rural: 80, motorway: 100 }),
        SOURCES.italySpeeds,
        'Vehicles for goods or other uses, 3.5 to 12 t; a motor caravan is read as another use.',
      ),
    },
    { overKg: 12000, limits: cite(openRoad({ rural: 70, motorway: 80 }), SOURCES.italySpeeds) },
  ],
};

export const PORTUGAL: CountryRule = {
  ...SPAIN,
  code: 'PT',
  name: 'Portugal',
  unsignedHeight: cite({ meaning: 'No height sign promises no clearance.' }, FROM_MEMORY),
  goodsSigns: cite('not known', FROM_MEMORY),
  massSign: cite('actual', FROM_MEMORY, 'The plate is tested all the same.'),
  urbanKmh: cite(50, SOURCES.portugalSpeeds),
  livingStreetKmh: cite(20, FROM_MEMORY),
  bandsBy: cite('plated', SOURCES.portugalSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(openRoad({ rural: 90, expressway: 100, motorway: 120 }), SOURCES.portugalSpeeds),
    },
    {
      overKg: 3500,
      limits: cite(
        openRoad({ rural: 80, motorway: 90 }),
        SOURCES.portugalSpeeds,
        'The law names heavy passenger and heavy goods vehicles; the lower figures stand here.',
      ),
    },
  ],
};

export const GREECE: CountryRule = {
  ...SPAIN,
  code: 'GR',
  name: 'Greece',
  unsignedHeight: cite({ meaning: 'No height sign promises no clearance.' }, FROM_MEMORY),
  goodsSigns: cite('not known', FROM_MEMORY),
  massSign: cite('actual', FROM_MEMORY, 'The plate is tested all the same.'),
  urbanKmh: cite(50, SOURCES.speedData),
  livingStreetKmh: cite(20, FROM_MEMORY),
  bandsBy: cite('plated', FROM_MEMORY),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 90, expressway: 110, motorway: 130 }),
        SOURCES.speedData,
        'No limit by mass was found for motor caravans; lorries have 80 and 85.',
      ),
    },
  ],
};
