import { describe, expect, it } from 'vitest';
import { speedFor } from '../../geo/drive/times/speed-for.ts';

const LIGHT = { grossKg: 3500, unladenKg: 3000 };
const HEAVY = { grossKg: 4250, unladenKg: 3400 };
const ROADS = {
  motorway: { highway: 'motorway' },
  dual: { highway: 'trunk', oneway: 'yes', dual_carriageway: 'yes' },
  expressway: { highway: 'trunk', motorroad: 'yes' },
  dualExpressway: { highway: 'trunk', motorroad: 'yes', dual_carriageway: 'yes' },
  other: { highway: 'secondary' },
  town: { highway: 'residential' },
};

function limit(country: string, vehicle: typeof LIGHT, road: keyof typeof ROADS): number | 'none' {
  const { legalKmh } = speedFor(ROADS[road], country, vehicle);
  return legalKmh === undefined ? 'none' : Math.round(legalKmh);
}

describe('Great Britain (gov.uk, Speed limits, motorhomes or motor caravans)', () => {
  const inMph = (kmh: number | 'none') => (kmh === 'none' ? kmh : Math.round(kmh / 1.609344));
  it.each([
    ['up to 3.05 t unladen', LIGHT, [30, 60, 70, 70]],
    ['over 3.05 t unladen', HEAVY, [30, 50, 60, 70]],
  ] as const)('%s', (_, vehicle, mph) => {
    const roads = ['town', 'other', 'dual', 'motorway'] as const;
    expect(roads.map((road) => inMph(limit('GB', vehicle, road)))).toEqual(mph);
  });

  it('in Wales 20 mph in lit streets (gov.wales, September 2023)', () => {
    expect(inMph(limit('GB-WLS', LIGHT, 'town'))).toBe(20);
  });
});

describe('outside towns, motorway / dual carriageway / other, km/h', () => {
  it.each([
    ['FR', LIGHT, [130, 110, 80], 'Code de la route R413-2'],
    ['FR', HEAVY, [110, 80, 80], 'Code de la route R413-8-1; 100 only where signed as a priority road'],
    ['DE', LIGHT, ['none', 'none', 100], 'StVO § 3'],
    ['DE', HEAVY, [100, 80, 80], 'StVO § 3(3), § 18(5), 12. Ausnahmeverordnung zur StVO § 1'],
    [
      'IT',
      LIGHT,
      [130, 90, 90],
      'Codice della strada art. 142(1); 110 only on a strada extraurbana principale',
    ],
    ['IT', HEAVY, [100, 80, 80], 'Codice della strada art. 142; OpenStreetMap wiki, Default speed limits'],
    ['AT', LIGHT, [130, 100, 100], 'OpenStreetMap wiki, Default speed limits'],
    ['AT', HEAVY, [80, 70, 70], 'KDV § 58'],
    ['CH', LIGHT, [120, 80, 80], 'OpenStreetMap wiki, Default speed limits'],
    ['CH', HEAVY, [100, 80, 80], 'SCCV on VRV art. 5'],
    ['NL', HEAVY, [100, 80, 80], 'RVV art. 20-22: 80 only for a commercial vehicle'],
    ['NL', LIGHT, [100, 80, 80], 'RVV art. 20-21; signed 100 by day since 16 March 2020'],
    ['BE', LIGHT, [120, 120, 70], 'OpenStreetMap wiki, Default speed limits, Flanders'],
    ['BE', HEAVY, [90, 90, 70], 'OpenStreetMap wiki, Default speed limits, Flanders'],
    ['IE', LIGHT, [120, 100, 80], 'OpenStreetMap wiki, Default speed limits'],
    ['IE', HEAVY, [120, 100, 80], 'S.I. 9/2005: goods vehicles, buses and towing alone'],
    ['PT', HEAVY, [90, 80, 80], 'Código da Estrada art. 27, the lower of its heavy vehicles'],
    ['DK', HEAVY, [100, 80, 80], 'Danish ministry, 15 March 2018'],
    ['CZ', HEAVY, [80, 80, 80], 'act 361/2000 § 18'],
    ['PL', HEAVY, [80, 80, 70], 'Polish motoring press'],
    ['SK', HEAVY, [100, 90, 90], 'OpenStreetMap wiki, Default speed limits, 2023'],
    ['NO', HEAVY, [110, 80, 80], 'Norwegian road authority: no own limit to 7.5 t'],
    ['NZ', HEAVY, [90, 90, 90], 'New Zealand motor caravan association'],
    // an autovía is a motorway in OpenStreetMap, so other dual carriageways are conventional roads
    ['ES', LIGHT, [120, 90, 90], 'Reglamento General de Circulación art. 48'],
    ['ES', HEAVY, [90, 80, 80], 'Reglamento General de Circulación art. 48'],
  ] as const)('%s %o: %o (%s)', (country, vehicle, kmh, _source) => {
    const roads = ['motorway', 'dual', 'other'] as const;
    expect(roads.map((road) => limit(country, vehicle, road))).toEqual(kmh);
  });
});

describe('roads for motor traffic only', () => {
  it.each([
    ['DE', HEAVY, 'expressway', 80, 'StVO § 3(3): one carriageway'],
    [
      'DE',
      HEAVY,
      'dualExpressway',
      100,
      '12. Ausnahmeverordnung: Kraftfahrstraßen with separated carriageways',
    ],
    ['AT', HEAVY, 'expressway', 80, 'KDV § 58: Autostraßen'],
    ['IT', LIGHT, 'dualExpressway', 110, 'Codice della strada art. 142(1)'],
    ['PL', LIGHT, 'dualExpressway', 120, 'OpenStreetMap wiki, Default speed limits, 2023'],
    ['PL', LIGHT, 'expressway', 100, 'OpenStreetMap wiki, Default speed limits, 2023'],
  ] as const)('in %s %o on an %s: %d km/h (%s)', (country, vehicle, road, kmh, _source) =>
    expect(limit(country, vehicle, road)).toBe(kmh),
  );
});

describe('over the second mass', () => {
  it('Germany over 7.5 t: 60 outside towns, 80 on motorways (StVO § 3 and § 18, from memory)', () => {
    const vehicle = { grossKg: 12_000, unladenKg: 9000 };
    expect([limit('DE', vehicle, 'other'), limit('DE', vehicle, 'motorway')]).toEqual([60, 80]);
  });

  it('France over 12 t: 90 on motorways (Décret 92-1227)', () => {
    expect(limit('FR', { grossKg: 15_000, unladenKg: 11_000 }, 'motorway')).toBe(90);
  });
});

describe('towns', () => {
  it.each([
    ['ES', 30, 'RD 970/2020, one lane each way'],
    ['DE', 50, 'StVO § 3'],
    ['FR', 50, 'Décret 92-1227'],
  ] as const)('%s %d km/h (%s)', (country, kmh, _source) => expect(limit(country, LIGHT, 'town')).toBe(kmh));
});
