import { cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { openRoad } from './open-road.ts';
import { band, roughly } from './roughly.ts';
import type { CountryRule } from './rule.ts';

export const NEW_ZEALAND: CountryRule = {
  ...roughly({
    code: 'NZ',
    name: 'New Zealand',
    bands: [
      band(0, cite(openRoad({ rural: 100, motorway: 100 }), SOURCES.speedData)),
      band(3500, cite(openRoad({ rural: 90, motorway: 90 }), SOURCES.newZealandSpeeds)),
    ],
  }),
  driveSide: cite('left', SOURCES.borderData),
  legalHeightM: cite(4.3, SOURCES.newZealandSize),
};

export const AUSTRALIA: CountryRule = {
  ...roughly({
    code: 'AU',
    name: 'Australia',
    bands: [
      band(
        0,
        cite(
          openRoad({ rural: 100, motorway: 100 }),
          SOURCES.australiaSpeeds,
          '110 in Western Australia and the Northern Territory.',
        ),
      ),
      band(12_000, cite(openRoad({ rural: 100, motorway: 100 }), SOURCES.australiaSpeeds)),
    ],
  }),
  driveSide: cite('left', SOURCES.borderData),
  legalHeightM: cite(4.3, FROM_MEMORY),
  goodsSigns: cite(
    'bind',
    SOURCES.australiaGoods,
    'A truck is anything over 4.5 t but a bus, tram or tractor; with a mass on the sign any vehicle over that mass, unless its way ends beyond it.',
  ),
};
