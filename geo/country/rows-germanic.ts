import { COMMON_PRACTICE, cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { CONTINENTAL_WIDTHS } from './default-widths.ts';
import type { CountryRule } from './rule.ts';

const RIGHT = cite('right' as const, FROM_MEMORY);
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
    SOURCES.osmMaxheight,
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
    'Sign 253 with the lorry catches every motor vehicle over 3.5 t plated but cars and buses; a mass plate beneath it sets another figure.',
  ),
  widthSign: cite('with mirrors', SOURCES.germanWidth),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.germanSpeeds),
  livingStreetKmh: cite(7, FROM_MEMORY, 'Walking pace; courts have said 4 to 10 km/h.'),
  bandsBy: cite('plated', SOURCES.germanSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(
        { rural: 100, dual: 'none', expressway: 100, motorway: 'none' },
        SOURCES.germanSpeeds,
        '130 km/h is advised where no limit stands.',
      ),
    },
    {
      overKg: 3500,
      limits: cite(
        { rural: 80, dual: 80, expressway: 100, motorway: 100 },
        SOURCES.germanSpeeds,
        'Entered as a motor caravan in its papers, up to 7.5 t.',
      ),
    },
    {
      overKg: 7500,
      limits: cite({ rural: 60, dual: 60, expressway: 80, motorway: 80 }, FROM_MEMORY, 'StVO § 3 and § 18.'),
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
  legalHeightM: cite(4.0, FROM_MEMORY),
  massSign: cite('actual', SOURCES.austriaMass),
  goodsSigns: cite(
    'do not bind',
    SOURCES.austriaGoods,
    'Entered as class M1. A plain mass sign binds every vehicle.',
  ),
  widthSign: cite('body', FROM_MEMORY, 'Germany counts mirrors; Austria was not checked.'),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.osmSpeeds),
  livingStreetKmh: cite(5, FROM_MEMORY, 'Walking pace in a Wohnstraße.'),
  bandsBy: cite('plated', SOURCES.austriaSpeeds),
  bands: [
    { overKg: 0, limits: cite({ rural: 100, dual: 100, expressway: 100, motorway: 130 }, SOURCES.osmSpeeds) },
    {
      overKg: 3500,
      limits: cite({ rural: 70, dual: 70, expressway: 80, motorway: 80 }, SOURCES.austriaSpeeds),
    },
  ],
};

export const SWITZERLAND: CountryRule = {
  code: 'CH',
  name: 'Switzerland',
  driveSide: RIGHT,
  unsignedHeight: cite(
    { meaning: '4.50 m over canton and commune roads by one canton’s rule; no promise in general.' },
    SOURCES.swissHeight,
  ),
  legalHeightM: cite(4.0, SOURCES.swissHeight),
  massSign: cite('actual', SOURCES.swissMass, 'The plate is tested all the same.'),
  goodsSigns: cite('do not bind', SOURCES.swissGoods, 'A heavy motor caravan is a vehicle for persons.'),
  widthSign: cite('body', FROM_MEMORY, 'Germany counts mirrors; Switzerland was not checked.'),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.osmSpeeds),
  livingStreetKmh: cite(20, FROM_MEMORY),
  bandsBy: cite('plated', SOURCES.swissSpeeds),
  bands: [
    { overKg: 0, limits: cite({ rural: 80, dual: 80, expressway: 100, motorway: 120 }, SOURCES.osmSpeeds) },
    {
      overKg: 3500,
      limits: cite({ rural: 80, dual: 80, expressway: 100, motorway: 100 }, SOURCES.swissSpeeds),
    },
  ],
};
