import { COMMON_PRACTICE, cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { CONTINENTAL_WIDTHS } from './default-widths.ts';
import { openRoad } from './open-road.ts';
import type { CountryRule } from './rule.ts';

const RIGHT = cite('right' as const, SOURCES.borderData);
const WIDTHS = cite(
  CONTINENTAL_WIDTHS,
  SOURCES.piarcLanes,
  'Main roads; the minor ones are judgement, ± 0.5 m.',
);
const KERBS = cite({ urban: 3, rural: 8 }, COMMON_PRACTICE, 'Judgement; town 1 to 6 m, country 4 to 12 m.');

export const GERMANY: CountryRule = {
  code: 'DE',
  name: 'Germany',
  driveSide: RIGHT,
  unsignedHeight: cite(
    { leastM: 4.5, meaning: 'On a public road no height sign means at least 4.5 m.' },
    SOURCES.germanUnsigned,
    'The figure on a German sign already holds back 0.2 to 0.3 m; nothing is added to it.',
  ),
  legalHeightM: cite(4.0, SOURCES.germanHeight),
  massSign: cite(
    'actual',
    SOURCES.germanSigns,
    'Sign 262 is the actual mass; the plate is tested all the same.',
  ),
  goodsSigns: cite(
    'bind',
    SOURCES.germanGoods,
    'Sign 253 with the lorry catches every motor vehicle over 3.5 t plated but cars and buses, and a motor caravan that heavy is no car here; a mass plate beneath it sets another figure.',
  ),
  widthSign: cite('with mirrors', SOURCES.germanWidth),
  widths: cite(CONTINENTAL_WIDTHS, SOURCES.germanRoads, 'Minor roads are judgement, ± 0.5 m.'),
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.germanSpeeds),
  livingStreetKmh: cite(7, SOURCES.speedData, 'Walking pace; courts have said 4 to 10 km/h.'),
  bandsBy: cite('plated', SOURCES.germanSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 100, dual: 'none', expressway: 100, motorway: 'none' }),
        SOURCES.germanSpeeds,
        '130 km/h is advised where no limit stands.',
      ),
    },
    {
      overKg: 3500,
      limits: cite(
        openRoad({ rural: 80, dual: 80, expressway: 80, dualExpressway: 100, motorway: 100 }),
        SOURCES.germanSpeeds,
        'Entered as a motor caravan in its papers, up to 7.5 t. The 100 holds on motorways and on motorroads with separated carriageways.',
      ),
    },
    {
      overKg: 7500,
      limits: cite(
        openRoad({ rural: 60, dual: 60, expressway: 60, dualExpressway: 80, motorway: 80 }),
        SOURCES.germanHeavy,
        'Dual carriageways that are no motorroad are read as 60, the prevailing view.',
      ),
    },
  ],
};

export const AUSTRIA: CountryRule = {
  code: 'AT',
  name: 'Austria',
  driveSide: RIGHT,
  unsignedHeight: cite(
    { meaning: 'About 4.5 m on main roads without a sign; no promise elsewhere.' },
    FROM_MEMORY,
  ),
  legalHeightM: cite(4.0, SOURCES.austriaHeight),
  massSign: cite(
    'actual',
    SOURCES.austriaMass,
    'A plain mass sign binds every vehicle; with a lorry plate beneath it lorries only.',
  ),
  goodsSigns: cite('do not bind', SOURCES.austriaGoods, 'Entered as class M1.'),
  widthSign: cite('body', FROM_MEMORY, 'Germany counts mirrors; Austria was not checked.'),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.speedData),
  livingStreetKmh: cite(5, SOURCES.speedData, 'Walking pace in a Wohnstraße.'),
  bandsBy: cite('plated', SOURCES.austriaSpeeds),
  bands: [
    { overKg: 0, limits: cite(openRoad({ rural: 100, motorway: 130 }), SOURCES.speedData) },
    {
      overKg: 3500,
      limits: cite(openRoad({ rural: 70, dual: 70, expressway: 80, motorway: 80 }), SOURCES.austriaSpeeds),
    },
  ],
};

export const SWITZERLAND: CountryRule = {
  code: 'CH',
  name: 'Switzerland',
  driveSide: RIGHT,
  unsignedHeight: cite(
    { leastM: 4.0, meaning: 'On a public road no height sign means that a vehicle 4.00 m high passes.' },
    SOURCES.swissHeight,
  ),
  legalHeightM: cite(4.0, SOURCES.swissLegal),
  massSign: cite('actual', SOURCES.swissMass, 'The plate is tested all the same.'),
  goodsSigns: cite(
    'do not bind',
    SOURCES.swissGoods,
    'The lorry ban and the ban on lorries overtaking leave a heavy motor caravan free: it is a vehicle for persons.',
  ),
  widthSign: cite('body', FROM_MEMORY, 'The sign says “with the load” and nothing of mirrors.'),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.speedData),
  livingStreetKmh: cite(20, SOURCES.swissMeeting),
  bandsBy: cite('plated', SOURCES.swissSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(openRoad({ rural: 80, dual: 80, expressway: 100, motorway: 120 }), SOURCES.speedData),
    },
    {
      overKg: 3500,
      limits: cite(openRoad({ rural: 80, dual: 80, expressway: 100, motorway: 100 }), SOURCES.swissSpeeds),
    },
  ],
};

/** Liechtenstein follows Swiss signs and habits. */
export const LIECHTENSTEIN: CountryRule = {
  ...SWITZERLAND,
  code: 'LI',
  name: 'Liechtenstein',
  unsignedHeight: cite({ meaning: 'No height sign promises no clearance.' }, FROM_MEMORY),
  legalHeightM: cite(4.0, FROM_MEMORY, 'As in Switzerland.'),
  massSign: cite('actual', FROM_MEMORY, 'As in Switzerland; the plate is tested all the same.'),
  goodsSigns: cite('do not bind', FROM_MEMORY, 'As in Switzerland.'),
  bandsBy: cite('plated', FROM_MEMORY),
  bands: [
    { overKg: 0, limits: cite(openRoad({ rural: 80, motorway: 80 }), SOURCES.speedData, 'No motorway.') },
  ],
};
