import { cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { openRoad } from './open-road.ts';
import { band, roughly } from './roughly.ts';
import type { CountryRule } from './rule.ts';

export const DENMARK = roughly({
  code: 'DK',
  name: 'Denmark',
  bands: [
    band(0, cite(openRoad({ rural: 80, motorway: 130 }), SOURCES.speedData)),
    band(3500, cite(openRoad({ rural: 80, motorway: 100 }), SOURCES.danishHeavy)),
    band(7500, cite(openRoad({ rural: 70, motorway: 80 }), FROM_MEMORY)),
  ],
});

export const SWEDEN = roughly({
  code: 'SE',
  name: 'Sweden',
  bands: [
    band(0, cite(openRoad({ rural: 70, motorway: 110 }), SOURCES.speedData)),
    band(
      3500,
      cite(
        openRoad({ rural: 70, motorway: 90 }),
        SOURCES.swedishSpeeds,
        'The law names buses and lorries; a passenger car of any mass has no limit of its own. The lower figure stands here.',
      ),
    ),
  ],
});

export const NORWAY: CountryRule = {
  ...roughly({
    code: 'NO',
    name: 'Norway',
    bands: [
      band(0, cite(openRoad({ rural: 80, motorway: 110 }), SOURCES.norwaySpeeds)),
      band(7500, cite(openRoad({ rural: 80, motorway: 80 }), SOURCES.norwaySpeeds)),
    ],
  }),
  legalHeightM: cite(undefined, FROM_MEMORY, 'No general height; signs decide.'),
};

export const FINLAND: CountryRule = {
  ...roughly({
    code: 'FI',
    name: 'Finland',
    bands: [
      band(
        0,
        cite(
          openRoad({ rural: 80, motorway: 120 }),
          SOURCES.speedData,
          '80 to 100 outside towns, as signed.',
        ),
      ),
      band(
        3500,
        cite(
          openRoad({ rural: 80, motorway: 80 }),
          SOURCES.finnishSpeeds,
          'As a bus: 80, or 100 if equipped.',
        ),
      ),
    ],
  }),
  legalHeightM: cite(4.4, FROM_MEMORY),
};
