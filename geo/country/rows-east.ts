import { cite, SOURCES } from './cited.ts';
import { openRoad } from './open-road.ts';
import { band, roughly } from './roughly.ts';

export const POLAND = roughly({
  code: 'PL',
  name: 'Poland',
  bands: [
    band(
      0,
      cite(
        openRoad({ rural: 90, dual: 100, expressway: 100, dualExpressway: 120, motorway: 140 }),
        SOURCES.speedData,
      ),
    ),
    band(
      3500,
      cite(
        openRoad({ rural: 70, dual: 80, expressway: 80, motorway: 80 }),
        SOURCES.polishSpeeds,
        'Disputed for motor caravans, even light ones entered as special vehicles.',
      ),
    ),
  ],
});

export const CZECHIA = roughly({
  code: 'CZ',
  name: 'Czechia',
  bands: [
    band(0, cite(openRoad({ rural: 90, expressway: 110, motorway: 130 }), SOURCES.speedData)),
    band(3500, cite(openRoad({ rural: 80, motorway: 80 }), SOURCES.czechSpeeds)),
  ],
});

export const SLOVAKIA = roughly({
  code: 'SK',
  name: 'Slovakia',
  bands: [
    band(0, cite(openRoad({ rural: 90, expressway: 130, motorway: 130 }), SOURCES.speedData)),
    band(3500, cite(openRoad({ rural: 90, expressway: 100, motorway: 100 }), SOURCES.speedData)),
  ],
});

export const HUNGARY = roughly({
  code: 'HU',
  name: 'Hungary',
  bands: [
    band(0, cite(openRoad({ rural: 90, expressway: 110, motorway: 130 }), SOURCES.speedData)),
    band(3500, cite(openRoad({ rural: 70, motorway: 80 }), SOURCES.speedData)),
  ],
});

export const SLOVENIA = roughly({
  code: 'SI',
  name: 'Slovenia',
  bands: [
    band(0, cite(openRoad({ rural: 90, expressway: 110, motorway: 130 }), SOURCES.speedData)),
    band(3500, cite(openRoad({ rural: 80, motorway: 80 }), SOURCES.speedData)),
  ],
});

export const CROATIA = roughly({
  code: 'HR',
  name: 'Croatia',
  bands: [
    band(0, cite(openRoad({ rural: 90, expressway: 110, motorway: 130 }), SOURCES.speedData)),
    band(3500, cite(openRoad({ rural: 80, motorway: 90 }), SOURCES.speedData)),
  ],
});
