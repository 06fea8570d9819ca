import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { speedFor } from '../../../../geo/drive/times/speed-for.ts';

const LIGHT = { grossKg: 3500, unladenKg: 2900 };
const HEAVY = { grossKg: 4250, unladenKg: 3300 };
const legal = (tags: Record<string, string>, country: string | undefined, vehicle = LIGHT, options = {}) =>
  Math.round(speedFor(tags, country, vehicle, options).legalKmh ?? Number.POSITIVE_INFINITY);
const inMph = (kmh: number) => Math.round(kmh / 1.609344);

describe('the legal speed', () => {
  it('is the mapped limit where one is mapped', () => {
    const speed = speedFor({ highway: 'primary', maxspeed: '40 mph' }, 'GB', LIGHT);
    expect(inMph(speed.legalKmh ?? 0)).toBe(40);
    expect(speed.general).toBeUndefined();
    expect(speed.why.because).toContain('maxspeed=40 mph');
  });

  it('takes the direction driven', () => {
    const tags = { highway: 'secondary', maxspeed: '80', 'maxspeed:backward': '50' };
    expect(legal(tags, 'DE', LIGHT, { forward: true })).toBe(80);
    expect(legal(tags, 'DE', LIGHT, { forward: false })).toBe(50);
    expect(legal({ ...tags, 'maxspeed:both_ways': '30' }, 'DE', LIGHT, { forward: false })).toBe(50);
    expect(legal({ highway: 'primary', 'maxspeed:both_ways': '30' }, 'DE')).toBe(30);
    expect(legal(tags, 'DE')).toBe(80);
  });

  it('takes the key for motorhomes before the one for all', () => {
    expect(legal({ highway: 'primary', maxspeed: '100', 'maxspeed:motorhome': '80' }, 'DE')).toBe(80);
  });

  it('leaves a lorry’s limit alone, but for a heavy motor caravan in Germany', () => {
    const tags = { highway: 'motorway', maxspeed: '120', 'maxspeed:hgv': '60' };
    expect(legal(tags, 'DE', LIGHT)).toBe(120);
    expect(legal(tags, 'DE', HEAVY)).toBe(60);
    expect(legal(tags, 'AT', HEAVY)).toBe(80);
  });

  it('of a heavy vehicle is its own where the sign allows more, and the sign’s where that is less', () => {
    expect(legal({ highway: 'motorway', maxspeed: '130' }, 'FR', HEAVY)).toBe(110);
    expect(legal({ highway: 'motorway', maxspeed: '90' }, 'FR', HEAVY)).toBe(90);
    expect(legal({ highway: 'motorway', maxspeed: 'none' }, 'DE', HEAVY)).toBe(100);
  });

  it('does not exist on a German motorway without a sign for a light vehicle', () => {
    const speed = speedFor({ highway: 'motorway' }, 'DE', LIGHT);
    expect(speed.legalKmh).toBeUndefined();
    expect(speed.why.law).toBe('No limit');
    expect(speed.kmh).toBeLessThanOrEqual(100);
  });

  it('knows a dual carriageway by its one-way main road, and not a roundabout or slip road', () => {
    expect(inMph(legal({ highway: 'trunk', oneway: 'yes' }, 'GB'))).toBe(70);
    expect(inMph(legal({ highway: 'trunk', oneway: 'yes', dual_carriageway: 'no' }, 'GB'))).toBe(60);
    expect(inMph(legal({ highway: 'trunk', oneway: 'yes', junction: 'roundabout' }, 'GB'))).toBe(60);
    expect(inMph(legal({ highway: 'trunk_link', oneway: 'yes' }, 'GB'))).toBe(60);
  });

  it('of a German expressway with two carriageways is the expressway’s for a heavy motor caravan', () => {
    expect(legal({ highway: 'trunk', oneway: 'yes', motorroad: 'yes' }, 'DE', HEAVY)).toBe(100);
    expect(legal({ highway: 'trunk', oneway: 'yes' }, 'DE', HEAVY)).toBe(80);
  });

  it('is the town’s where tags, lights, footways or the caller say town', () => {
    expect(legal({ highway: 'secondary', 'source:maxspeed': 'DE:urban' }, 'DE')).toBe(50);
    expect(legal({ highway: 'secondary', 'zone:traffic': 'DE:urban' }, 'DE')).toBe(50);
    expect(inMph(legal({ highway: 'secondary', lit: 'yes' }, 'GB'))).toBe(30);
    expect(legal({ highway: 'tertiary', sidewalk: 'both' }, 'DE')).toBe(50);
    expect(legal({ highway: 'tertiary' }, 'DE', LIGHT, { urban: true })).toBe(50);
    expect(legal({ highway: 'tertiary' }, 'DE')).toBe(100);
    expect(legal({ highway: 'residential' }, 'DE')).toBe(50);
    expect(legal({ highway: 'residential' }, 'DE', LIGHT, { urban: false })).toBe(100);
  });

  it('follows the implied limit of the tags', () => {
    expect(inMph(legal({ highway: 'primary', maxspeed: 'GB:nsl_single' }, 'GB', HEAVY))).toBe(50);
    expect(inMph(legal({ highway: 'primary', maxspeed: 'GB:nsl_dual' }, 'GB', HEAVY))).toBe(60);
    expect(legal({ highway: 'residential', 'zone:maxspeed': 'DE:30' }, 'DE')).toBe(30);
    expect(inMph(legal({ highway: 'primary', maxspeed: 'national' }, 'GB'))).toBe(60);
  });

  it('in a Welsh street is 20 mph', () => {
    expect(inMph(legal({ highway: 'residential' }, 'GB-WLS'))).toBe(20);
    expect(inMph(legal({ highway: 'residential', 'maxspeed:type': 'GB:nsl_restricted' }, 'GB-WLS'))).toBe(20);
    expect(inMph(legal({ highway: 'residential' }, 'GB'))).toBe(30);
  });

  it('without a readable sign falls back to the general one, and says so', () => {
    const speed = speedFor({ highway: 'primary', maxspeed: 'fast' }, 'DE', LIGHT);
    expect(speed.legalKmh).toBe(100);
    expect(speed.mapped).toBe(false);
    expect(speed.notes.join()).toContain('maxspeed=fast gives no figure');
  });

  it('in a country without a row is cautious, and says so', () => {
    const speed = speedFor({ highway: 'primary' }, 'RO', LIGHT);
    expect(speed.legalKmh).toBe(80);
    expect(speed.notes.join()).toContain('no row of rules for RO');
    expect(speedFor({ highway: 'primary' }, undefined, LIGHT).notes.join()).toContain('not known');
  });
});

describe('the unladen mass in Great Britain', () => {
  const road = { highway: 'primary' };
  it('decides, not the plate', () => {
    expect(inMph(legal(road, 'GB', { grossKg: 4250, unladenKg: 3050 }))).toBe(60);
    expect(inMph(legal(road, 'GB', { grossKg: 4250, unladenKg: 3051 }))).toBe(50);
  });

  it('not on the card is bounded by the plate and the empty weight', () => {
    const running = { frontKg: 1500, rearKg: 1500, includesDriver: true, includesFreshWater: true };
    expect(speedFor(road, 'GB', { grossKg: 3050 }).notes).toEqual([]);
    const speed = speedFor(road, 'GB', { grossKg: 3500, runningOrder: running });
    expect(inMph(speed.legalKmh ?? 0)).toBe(60);
    expect(speed.notes).toEqual([]);
  });

  it('not known at all gives the lower limits, and says so', () => {
    const speed = speedFor(road, 'GB', { grossKg: 3500 });
    expect(inMph(speed.legalKmh ?? 0)).toBe(50);
    expect(speed.notes.join()).toContain('unladenKg');
  });
});

describe('the likely speed', () => {
  const likely = (tags: Record<string, string>) => speedFor(tags, 'GB', LIGHT).kmh;

  it('falls with the class of road, though the law’s is the same', () => {
    const speeds = ['trunk', 'primary', 'secondary', 'tertiary', 'unclassified', 'service'].map((highway) =>
      likely({ highway }),
    );
    expect(speeds).toEqual([...speeds].sort((a, b) => b - a));
    expect(new Set(speeds).size).toBe(speeds.length);
  });

  it.each([
    [{ highway: 'unclassified', surface: 'gravel' }, 35],
    [{ highway: 'track', tracktype: 'grade4' }, 12],
    [{ highway: 'unclassified', lanes: '1' }, 40],
    [{ highway: 'unclassified', width: '2.8' }, 30],
    [{ highway: 'unclassified', smoothness: 'very_bad' }, 15],
    [{ highway: 'living_street' }, 10],
    [{ highway: 'primary', junction: 'roundabout', oneway: 'yes' }, 25],
    [{ highway: 'secondary', 'maxspeed:advisory': '25' }, 25],
  ])('of %o is at most %d km/h', (tags, kmh) => expect(likely(tags)).toBeLessThanOrEqual(kmh));

  it('is not narrowed by one lane of a one-way road', () => {
    expect(likely({ highway: 'primary', oneway: 'yes', lanes: '1' })).toBeGreaterThan(60);
  });

  it('never exceeds the law and never stands still', () => {
    const tag = fc.record(
      {
        highway: fc.constantFrom(
          'motorway',
          'trunk',
          'primary',
          'residential',
          'track',
          'living_street',
          'x',
        ),
        maxspeed: fc.constantFrom('20', '30 mph', '120', 'none', 'walk', 'DE:rural', 'nonsense'),
        oneway: fc.constantFrom('yes', 'no'),
        surface: fc.constantFrom('asphalt', 'sand', 'constructor'),
      },
      { requiredKeys: ['highway'] },
    );
    const country = fc.constantFrom('GB', 'DE', 'FR', 'IT', 'US', 'XX', undefined);
    fc.assert(
      fc.property(tag, country, fc.constantFrom(LIGHT, HEAVY), (tags, where, vehicle) => {
        const speed = speedFor(tags, where, vehicle);
        expect(speed.kmh).toBeGreaterThanOrEqual(3);
        expect(speed.kmh).toBeLessThanOrEqual((speed.legalKmh ?? 100) + 1e-9);
        expect(speed.why.likely.length).toBeGreaterThan(10);
      }),
    );
  });

  it('of a heavy vehicle is never the faster', () => {
    for (const country of ['GB', 'IE', 'FR', 'DE', 'ES', 'IT', 'NL', 'BE', 'AT', 'CH', 'US', 'CA'])
      for (const highway of ['motorway', 'trunk', 'primary', 'tertiary', 'residential'])
        expect(speedFor({ highway }, country, HEAVY).kmh).toBeLessThanOrEqual(
          speedFor({ highway }, country, LIGHT).kmh,
        );
  });
});
