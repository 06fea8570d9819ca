import { COMMON_PRACTICE, cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { CONTINENTAL_WIDTHS } from './default-widths.ts';
import type { CountryRule } from './rule.ts';

const RIGHT = cite('right' as const, FROM_MEMORY);
const WIDTHS = cite(CONTINENTAL_WIDTHS, COMMON_PRACTICE, 'Judgement; ± 0.5 m.');
const KERBS = cite({ urban: 3, rural: 8 }, COMMON_PRACTICE, 'Judgement; town 1 to 6 m, country 4 to 12 m.');

export const FRANCE: CountryRule = {
  code: 'FR',
  name: 'France',
  driveSide: RIGHT,
  unsignedHeight: cite(
    {
      leastM: 4.3,
      motorwayLeastM: 4.75,
      meaning: 'On a public road no height sign means at least 4.30 m, on motorways 4.75 m.',
    },
    SOURCES.osmMaxheight,
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
  urbanKmh: cite(50, SOURCES.franceSpeeds),
  livingStreetKmh: cite(20, FROM_MEMORY, 'Zone de rencontre.'),
  bandsBy: cite('plated', SOURCES.franceSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(
        { rural: 80, dual: 110, expressway: 80, motorway: 130 },
        SOURCES.osmSpeeds,
        'Some departments sign 90 km/h; less in rain.',
      ),
    },
    {
      overKg: 3500,
      limits: cite({ rural: 80, dual: 100, expressway: 80, motorway: 110 }, SOURCES.franceSpeeds),
    },
    {
      overKg: 12000,
      limits: cite({ rural: 80, dual: 80, expressway: 80, motorway: 90 }, SOURCES.franceSpeeds),
    },
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
  legalHeightM: cite(4.0, FROM_MEMORY),
  massSign: cite('actual', SOURCES.dutchMass, 'The plate is tested all the same.'),
  goodsSigns: cite('do not bind', SOURCES.dutchGoods),
  widthSign: cite('body', FROM_MEMORY),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.osmSpeeds),
  livingStreetKmh: cite(15, FROM_MEMORY, 'Erf.'),
  bandsBy: cite('plated', SOURCES.dutchSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(
        { rural: 80, dual: 80, expressway: 100, motorway: 100 },
        FROM_MEMORY,
        'Motorways 100 km/h from 6 to 19 h since 2020; up to 130 km/h at night where signed.',
      ),
    },
    {
      overKg: 3500,
      limits: cite(
        { rural: 80, dual: 80, expressway: 80, motorway: 80 },
        SOURCES.dutchSpeeds,
        'As a car where the certificate says passenger car; the lower figure stands here.',
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
  legalHeightM: cite(4.0, SOURCES.belgianHeight),
  massSign: cite('actual', SOURCES.belgianMass, 'The plate is tested all the same.'),
  goodsSigns: cite(
    'not known',
    SOURCES.belgianGoods,
    'C23 is for lorries; that a motor caravan is free of it was not read.',
  ),
  widthSign: cite('body', FROM_MEMORY),
  widths: WIDTHS,
  kerbRadiusM: KERBS,
  urbanKmh: cite(50, SOURCES.osmSpeeds, '30 km/h in the Brussels region.'),
  livingStreetKmh: cite(20, SOURCES.osmSpeeds),
  bandsBy: cite('plated', SOURCES.osmSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(
        { rural: 70, dual: 120, expressway: 70, motorway: 120 },
        SOURCES.osmSpeeds,
        '70 km/h is Flanders and Brussels; Wallonia has 90.',
      ),
    },
    { overKg: 3500, limits: cite({ rural: 70, dual: 90, expressway: 70, motorway: 90 }, SOURCES.osmSpeeds) },
    {
      overKg: 7500,
      limits: cite(
        { rural: 60, dual: 90, expressway: 60, motorway: 90 },
        FROM_MEMORY,
        'Royal decree of 1 December 1975, art. 11.',
      ),
    },
  ],
};
