import { COMMON_PRACTICE, cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { CONTINENTAL_WIDTHS } from './default-widths.ts';
import type { CountryRule } from './rule.ts';

const RIGHT = cite('right' as const, FROM_MEMORY);
const WIDTHS = cite(CONTINENTAL_WIDTHS, COMMON_PRACTICE, 'Judgement; ± 0.5 m.');
const KERBS = cite({ urban: 3, rural: 8 }, COMMON_PRACTICE, 'Judgement; town 1 to 6 m, country 4 to 12 m.');
const ABOUT_4_5 = cite(
  { meaning: 'About 4.5 m on main roads without a sign; no promise elsewhere.' },
  FROM_MEMORY,
);

export const SPAIN: CountryRule = {
  code: 'ES',
  name: 'Spain',
  driveSide: RIGHT,
  unsignedHeight: ABOUT_4_5,
  legalHeightM: cite(4.0, FROM_MEMORY),
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
        { rural: 90, dual: 90, expressway: 90, motorway: 120 },
        SOURCES.spainSpeeds,
        'An autovía is mapped as a motorway and counts as one.',
      ),
    },
    {
      overKg: 3500,
      limits: cite({ rural: 80, dual: 80, expressway: 80, motorway: 90 }, SOURCES.spainSpeeds),
    },
  ],
};

export const ITALY: CountryRule = {
  code: 'IT',
  name: 'Italy',
  driveSide: RIGHT,
  unsignedHeight: ABOUT_4_5,
  legalHeightM: cite(4.0, FROM_MEMORY),
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
      limits: cite({ rural: 90, dual: 110, expressway: 110, motorway: 130 }, SOURCES.italySpeeds),
    },
    {
      overKg: 3500,
      limits: cite(
        { rural: 80, dual: 80, expressway: 80, motorway: 100 },
        SOURCES.italySpeeds,
        'Vehicles for goods or other uses, 3.5 to 12 t; a motor caravan is read as another use.',
      ),
    },
    {
      overKg: 12000,
      limits: cite({ rural: 70, dual: 70, expressway: 70, motorway: 80 }, SOURCES.italySpeeds),
    },
  ],
};
