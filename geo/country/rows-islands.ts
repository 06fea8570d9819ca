import { COMMON_PRACTICE, cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { BRITISH_WIDTHS } from './default-widths.ts';
import { openRoad } from './open-road.ts';
import { type CountryRule, mph } from './rule.ts';

export const GREAT_BRITAIN: CountryRule = {
  code: 'GB',
  name: 'Great Britain and Northern Ireland',
  driveSide: cite('left', SOURCES.borderData),
  unsignedHeight: cite(
    {
      leastM: 5.03,
      meaning:
        'On a public road no height sign means at least 5.03 m (16 ft 6 in). It means nothing on private ground, in car parks, under trees or canopies.',
    },
    SOURCES.hseHeight,
  ),
  legalHeightM: cite(undefined, FROM_MEMORY, 'No legal height; over 3 m a notice in the cab.'),
  massSign: cite(
    'plated',
    SOURCES.trafficSignsManualMass,
    'Some drivers read it as the actual weight; testing the plate is the safe reading.',
  ),
  goodsSigns: cite(
    'do not bind',
    SOURCES.trafficSignsManual3,
    'A motor caravan is a goods vehicle only as a shop, workshop or store.',
  ),
  widthSign: cite('body', SOURCES.cAndU, 'The sign’s figure holds back 6 in; nothing is added to it.'),
  widths: cite(BRITISH_WIDTHS, SOURCES.manualForStreets, 'Partly judgement; ± 0.5 m.'),
  kerbRadiusM: cite(
    { urban: 6, rural: 8 },
    SOURCES.manualForStreets,
    'Judgement; urban 3 to 8 m, rural 4 to 12 m.',
  ),
  urbanKmh: cite(mph(30), SOURCES.govUkSpeeds),
  livingStreetKmh: cite(mph(20), FROM_MEMORY, 'A home zone has no limit of its own.'),
  bandsBy: cite(
    'unladen',
    SOURCES.govUkSpeeds,
    'Unladen mass, without fuel, driver, water or gas; not the plate.',
  ),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: mph(60), dual: mph(70), expressway: mph(60), motorway: mph(70) }),
        SOURCES.govUkSpeeds,
      ),
    },
    {
      overKg: 3050,
      limits: cite(
        openRoad({ rural: mph(50), dual: mph(60), expressway: mph(50), motorway: mph(70) }),
        SOURCES.govUkSpeeds,
      ),
    },
  ],
};

/** Wales is Great Britain with 20 mph where street lights stand. ISO 3166-2 GB-WLS. */
export const WALES: CountryRule = {
  ...GREAT_BRITAIN,
  urbanKmh: cite(mph(20), SOURCES.walesSpeeds, 'Wales; 30 mph where signed.'),
};

export const IRELAND: CountryRule = {
  code: 'IE',
  name: 'Ireland',
  driveSide: cite('left', SOURCES.borderData),
  unsignedHeight: cite({ meaning: 'No height sign promises no clearance.' }, FROM_MEMORY),
  legalHeightM: cite(4.65, SOURCES.irelandHeight),
  massSign: cite('plated', FROM_MEMORY),
  goodsSigns: cite('do not bind', FROM_MEMORY, 'Goods signs name goods vehicles by design gross weight.'),
  widthSign: cite('body', SOURCES.irelandWidth),
  widths: cite(BRITISH_WIDTHS, SOURCES.dmurs, 'Partly judgement; ± 0.5 m.'),
  kerbRadiusM: cite(
    { urban: 4.5, rural: 8 },
    SOURCES.dmurs,
    'Main streets 6 m, into local streets 4.5 m, local 1 to 3 m; rural is judgement.',
  ),
  urbanKmh: cite(50, SOURCES.irelandTown, 'An Act of 2024 sets 30 in towns once it is commenced.'),
  livingStreetKmh: cite(30, FROM_MEMORY),
  bandsBy: cite('plated', SOURCES.irelandSpeeds),
  bands: [
    {
      overKg: 0,
      limits: cite(
        openRoad({ rural: 80, dual: 100, expressway: 100, motorway: 120 }),
        SOURCES.irelandSpeeds,
        'The lower vehicle limits name goods vehicles over 3.5 t, buses and towing; a motor caravan is read as none of them.',
      ),
    },
  ],
  ruralByHighway: cite(
    { trunk: 100, primary: 100, secondary: 80, tertiary: 60, unclassified: 60 },
    SOURCES.irelandLocal,
    'An Act of 2024 sets 80 on national secondary roads once it is commenced.',
  ),
};

export const MALTA: CountryRule = {
  ...GREAT_BRITAIN,
  code: 'MT',
  name: 'Malta',
  unsignedHeight: cite({ meaning: 'No height sign promises no clearance.' }, FROM_MEMORY),
  legalHeightM: cite(4.0, SOURCES.directive96),
  massSign: cite('plated', FROM_MEMORY, 'The stricter reading.'),
  goodsSigns: cite('not known', FROM_MEMORY),
  widthSign: cite('with mirrors', FROM_MEMORY, 'The stricter reading.'),
  widths: cite(BRITISH_WIDTHS, COMMON_PRACTICE, 'Judgement; ± 0.5 m.'),
  kerbRadiusM: cite({ urban: 3, rural: 8 }, COMMON_PRACTICE, 'Judgement.'),
  urbanKmh: cite(50, SOURCES.speedData),
  livingStreetKmh: cite(20, FROM_MEMORY),
  bandsBy: cite('plated', FROM_MEMORY),
  bands: [
    { overKg: 0, limits: cite(openRoad({ rural: 80, motorway: 80 }), SOURCES.speedData, 'No motorway.') },
  ],
};
