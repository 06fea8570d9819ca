import { COMMON_PRACTICE, cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { CONTINENTAL_WIDTHS } from './default-widths.ts';
import { openRoad } from './open-road.ts';
import type { CountryRule } from './rule.ts';

const RIGHT = cite('right' as const, SOURCES.borderData);
const WIDTHS = cite(CONTINENTAL_WIDTHS, COMMON_PRACTICE, 'Judgement; ± 0.5 m.');
const KERBS = cite({ urban: 3, rural: 8 }, COMMON_PRACTICE, 'Judgement; town 1 to 6 m, country 4 to 12 m.');

export const FRANCE: CountryRule = {
  code: 'FR',
  name: 'France',
  driveSide: RIGHT,
  unsignedHeight: cite(
    { leastM: 4.3, meaning: 'On a public road no height sign means at least 4.30 m.' },
    SOURCES.franceHeight,
    'The figure on a French sign stands 0.20 to 0.30 m below the real clearance; nothing is added to it.',
  ),
  legalHeightM: cite(undefined, FROM_MEMORY, 'None in law; 4.30 m in practice.'),
  massSign: cite('plated', SOURCES.franceMass),
  goodsSigns: cite(
    'do not bind',
    SOURCES.franceGoods,
    'B8 by the wording of its sister sign B3a; a B13 mass sign binds every vehicle.',
  ),
  widthSign: cite('body', FROM_MEMORY, 'B11 says load included and nothing of mirrors.'),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.franceCars),
  livingStreetKmh: cite(20, SOURCES.speedData, 'Zone de rencontre.'),
  bandsBy: cite('plated', SOURCES.franceHeavy),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 80, dual: 110, expressway: 80, motorway: 130 }),
        SOURCES.franceCars,
        'Some departments sign 90 km/h; in rain 80, 100, 110.',
      ),
    },
    {
      overKg: 3500,
      limits: cite(
        openRoad({ rural: 80, motorway: 110 }),
        SOURCES.franceHeavy,
        '100 only on separated roads signed as priority roads, which the map does not tell.',
      ),
    },
    { overKg: 12000, limits: cite(openRoad({ rural: 80, motorway: 90 }), SOURCES.franceHeavy) },
  ],
};

export const NETHERLANDS: CountryRule = {
  code: 'NL',
  name: 'Netherlands',
  driveSide: RIGHT,
  unsignedHeight: cite(
    { meaning: 'A sign’s figure is legal and less than physical; no sign promises no clearance.' },
    SOURCES.dutchHeight,
  ),
  legalHeightM: cite(4.0, SOURCES.directive96),
  massSign: cite('actual', SOURCES.dutchMass, 'The plate is tested all the same.'),
  goodsSigns: cite('do not bind', SOURCES.dutchGoods),
  widthSign: cite('body', FROM_MEMORY, 'Sign C18 says “with the load” and nothing of mirrors.'),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.dutchSpeeds),
  livingStreetKmh: cite(15, SOURCES.speedData, 'Erf.'),
  bandsBy: cite('plated', SOURCES.dutchSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 80, expressway: 100, motorway: 100 }),
        SOURCES.dutchMotorway,
        'Motorways 100 km/h from 6 to 19 h since 2020; up to 130 km/h at night where signed. Over 3.5 t the same, unless the certificate says commercial vehicle: then 80.',
      ),
    },
  ],
};

export const BELGIUM: CountryRule = {
  code: 'BE',
  name: 'Belgium',
  driveSide: RIGHT,
  unsignedHeight: cite(
    { meaning: 'About 4.5 m on main roads without a sign; no promise elsewhere.' },
    FROM_MEMORY,
  ),
  legalHeightM: cite(4.0, SOURCES.directive96),
  massSign: cite('actual', SOURCES.belgianMass, 'The plate is tested all the same.'),
  goodsSigns: cite(
    'do not bind',
    SOURCES.belgianGoods,
    'A mass plate under the sign means the permitted mass of such vehicles.',
  ),
  widthSign: cite('body', FROM_MEMORY),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(
    50,
    SOURCES.speedData,
    '30 km/h in the Brussels region. A new road code is published for 1 September 2026 and may be put off.',
  ),
  livingStreetKmh: cite(20, SOURCES.speedData),
  bandsBy: cite('plated', SOURCES.speedData),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 70, dual: 120, expressway: 70, motorway: 120 }),
        SOURCES.speedData,
        '70 km/h is Flanders and Brussels; Wallonia has 90.',
      ),
    },
    {
      overKg: 3500,
      limits: cite(openRoad({ rural: 70, dual: 90, expressway: 70, motorway: 90 }), SOURCES.belgianDivided),
    },
    {
      overKg: 7500,
      limits: cite(openRoad({ rural: 60, dual: 90, expressway: 60, motorway: 90 }), SOURCES.belgianSpeeds),
    },
  ],
};

export const LUXEMBOURG: CountryRule = {
  ...BELGIUM,
  code: 'LU',
  name: 'Luxembourg',
  massSign: cite('actual', FROM_MEMORY, 'The plate is tested all the same.'),
  goodsSigns: cite('not known', FROM_MEMORY),
  urbanKmh: cite(50, SOURCES.luxembourgSpeeds),
  livingStreetKmh: cite(20, SOURCES.luxembourgSpeeds),
  bandsBy: cite('plated', SOURCES.luxembourgSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 90, motorway: 130 }),
        SOURCES.luxembourgSpeeds,
        'In the wet 110 on motorways.',
      ),
    },
    { overKg: 7500, limits: cite(openRoad({ rural: 75, motorway: 90 }), SOURCES.luxembourgSpeeds) },
  ],
};
