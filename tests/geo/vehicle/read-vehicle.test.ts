import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readVehicle } from '../../../geo/vehicle/read-vehicle.ts';
import { COACHBUILT } from '../../support/ask.ts';

const { ...GOOD } = COACHBUILT;

function readCard(card: unknown) {
  return readVehicle(typeof card === 'string' ? card : JSON.stringify(card), 'van.json');
}

/** The sentence a refused card is refused with. */
function refusal(card: unknown): string {
  const read = readCard(card);
  if (read.ok) throw new Error('the card was accepted');
  return read.error.message;
}

describe('a vehicle card', () => {
  it('is read as written', () => {
    expect(readCard(GOOD)).toEqual({ ok: true, value: GOOD });
  });

  it('may begin with a byte order mark', () => {
    expect(readCard(`\uFEFF${JSON.stringify(GOOD)}`).ok).toBe(true);
  });

  it('may carry every optional field', () => {
    const full = {
      ...GOOD,
      rack: { lengthM: 0.6, widthM: 1.8, fitted: true, limitKg: 60 },
      turningCircleM: 13.5,
      trackM: 1.8,
      unladenKg: 2800,
      runningOrder: { frontKg: 1500, rearKg: 1450, includesDriver: true, includesFreshWater: false },
      rearClearanceM: 0.3,
      bellyClearanceM: 0.16,
      gasKg: 22,
      seats: [{ name: 'Driver', xM: 0.4 }],
      tanks: [{ name: 'Water', holds: 'fresh-water', xM: 2.4, capacityL: 110 }],
      lockers: [
        { name: 'Garage', xM: 5.3, limitKg: 150 },
        { name: 'Nose', xM: -0.4 },
      ],
      notes: 'invented',
    };
    expect(readCard(full)).toEqual({ ok: true, value: full });
  });

  it('that is not JSON is refused with its line', () => {
    expect(refusal('{\n "format": "lanegauge.vehicle",\n oops }')).toMatch(/van\.json .*not JSON \(line 3\)/);
    expect(refusal('')).toMatch(/not JSON/);
  });

  it.each([['null'], ['[]'], ['3'], ['"text"'], ['true']])('cannot be %s', (text) => {
    expect(refusal(text)).toMatch(/the card must be an object in braces, not /);
  });

  it('names what is missing', () => {
    const { heightM: _, ...rest } = GOOD;
    expect(refusal(rest)).toContain('heightM is missing');
    expect(refusal({ ...GOOD, axleKg: { front: 1850 } })).toContain('axleKg.rear is missing');
    const { format: __, ...formless } = GOOD;
    expect(refusal(formless)).toContain('format is missing');
  });

  it('refuses unknown fields by name, so that a misspelt size cannot vanish', () => {
    expect(refusal({ ...GOOD, heigthM: 3.4 })).toContain('"heigthM" is no field of a vehicle card');
    expect(refusal({ ...GOOD, axleKg: { front: 1850, rear: 2000, raer: 1 } })).toContain('axleKg: "raer"');
    expect(refusal({ ...GOOD, rack: { lengthM: 0.6, widthM: 1.8, fitted: true, heightM: 2 } })).toContain(
      'rack: "heightM"',
    );
  });

  it('takes a number in quotes for a slip and says how to mend it', () => {
    expect(refusal({ ...GOOD, heightM: '3.05' })).toContain(
      'heightM must be a number, not the text "3.05" (write 3.05 without quotes)',
    );
    expect(refusal({ ...GOOD, heightM: `10'0"` })).toContain(
      `heightM must be a number, not the text "10'0"" (10'0" is 3.05 m: write 3.048)`,
    );
  });

  it('asks about feet with decimals, which may be inches, and takes neither', () => {
    const both = '10 ft 11 in (3.33 m) or 10.11 ft (3.09 m)';
    expect(refusal({ ...GOOD, heightM: 10.11 })).toContain(
      `heightM is 10.11, but at most 5 m can be right; perhaps ${both} is meant`,
    );
    // JSON leaves nothing of the last nought of 10.10
    expect(refusal({ ...GOOD, heightM: 10.1 })).toContain('perhaps 10 ft 10 in (3.31 m) or 10.10 ft');
    expect(refusal({ ...GOOD, heightM: "10.11'" })).toContain(`(${both}: write 3.3274 or 3.0815)`);
  });

  it.each([
    ['centimetres', 305],
    ['a lost digit', 0.305],
    ['nothing', 0],
    ['a negative size', -3.05],
  ])('refuses %s as a height', (_, heightM) => {
    expect(refusal({ ...GOOD, heightM })).toMatch(
      /heightM is -?[\d.]+, but at (most [\d.]+ m can be right|least [\d.]+ m is needed)/,
    );
  });

  it('refuses tonnes as a gross mass', () => {
    expect(refusal({ ...GOOD, grossKg: 3.5 })).toContain('grossKg is 3.5, but at least 500 kg is needed');
  });

  it.each([['1e999'], ['-1e999'], ['NaN'], ['null'], ['{}'], ['[3.05]']])(
    'refuses %s as a height',
    (text) => {
      expect(readCard(JSON.stringify(GOOD).replace('"heightM":3.05', `"heightM":${text}`)).ok).toBe(false);
    },
  );

  it('refuses another format or version', () => {
    expect(refusal({ ...GOOD, format: 'lanegauge.load' })).toContain('is a load list, not a vehicle card');
    expect(refusal({ ...GOOD, format: 'other' })).toContain('format must be "lanegauge.vehicle"');
    expect(refusal({ ...GOOD, version: 2 })).toContain('version must be 1, not 2');
  });

  it('refuses a length its parts do not add up to, beyond 2 cm', () => {
    expect(readCard({ ...GOOD, lengthM: 7.02 }).ok).toBe(true);
    expect(readCard({ ...GOOD, lengthM: 6.98 }).ok).toBe(true);
    expect(refusal({ ...GOOD, lengthM: 7.03 })).toMatch(/7\.000 m, but lengthM is 7\.030 m/);
  });

  it('refuses a turning circle too small for its wheelbase: a radius, most often', () => {
    const said = /turningCircleM: 7 m is too small for a wheelbase of [\d.]+ m; give the whole width/;
    expect(refusal(JSON.stringify({ ...GOOD, turningCircleM: 7 }))).toMatch(said);
    expect(refusal(JSON.stringify({ ...GOOD, turningCircleWallM: 9 }))).toMatch(
      /turningCircleWallM: 9 m is too small/,
    );
    expect(readCard({ ...GOOD, turningCircleM: 12, turningCircleWallM: 14 }).ok).toBe(true);
  });

  it('names the place that is wrong among seats, tanks and lockers', () => {
    const tank = { name: 'Water', holds: 'fresh-water', xM: 2.4, capacityL: 110 };
    expect(refusal({ ...GOOD, tanks: [{ ...tank, holds: 'beer' }] })).toContain('tanks.0.holds must be');
    expect(refusal({ ...GOOD, tanks: [{ ...tank, xM: 240 }] })).toContain(
      'tanks.0.xM is 240, but at most 20 m',
    );
    expect(refusal({ ...GOOD, tanks: [tank, { ...tank, holds: 'waste-water' }] })).toContain(
      '"Water" is the name of another place',
    );
    expect(refusal({ ...GOOD, lockers: [{ name: 'Rack', xM: 6 }] })).toContain("the rack's own name");
    expect(refusal({ ...GOOD, seats: [{ name: ' ', xM: 1 }] })).toContain('seats.0.name is blank');
    expect(refusal({ ...GOOD, seats: [{ name: 'Bench', xM: 1, people: 2 }] })).toContain('seats.0: "people"');
    expect(refusal({ ...GOOD, seats: 'two' })).toContain('seats must be a list in brackets');
    const many = Array.from({ length: 31 }, (_, i) => ({ name: `Seat ${i}`, xM: 1 }));
    expect(refusal({ ...GOOD, seats: many })).toContain('seats holds more than 30');
  });

  it('refuses mirrors narrower than the body, and folded ones wider than unfolded', () => {
    expect(refusal({ ...GOOD, widthMirrorsM: 2.2, widthMirrorsFoldedM: 2.2 })).toContain(
      'less than the body',
    );
    expect(refusal({ ...GOOD, widthMirrorsFoldedM: 2.9 })).toContain('folded mirrors are wider');
  });

  it('refuses __proto__ at any depth and is not poisoned by it', () => {
    const text = JSON.stringify(GOOD);
    expect(refusal(text.replace('{', '{"__proto__":{"heightM":1.6},'))).toContain('"__proto__"');
    expect(refusal(text.replace('"front":', '"__proto__":{"rear":1},"front":'))).toContain('"__proto__"');
    expect(({} as Record<string, unknown>)['heightM']).toBeUndefined();
  });

  it('refuses a field named twice, of which one would vanish', () => {
    const text = JSON.stringify(GOOD);
    const message = `van.json is not a usable vehicle card: "heightM" stands there twice. Keep one of them and try again.`;
    expect(refusal(text.replace('"heightM":', '"heightM":2.1,"heightM":'))).toBe(message);
    expect(refusal(text.replace('"heightM":', '"height\\u004d": 2.1, "heightM" :'))).toBe(message);
    const words = { ...GOOD, notes: '"heightM": 2 {', name: 'a"heightM":{' };
    expect(readCard(words)).toEqual({ ok: true, value: words });
  });

  it('keeps its refusal short whatever the file holds', () => {
    const many = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`field${i}`, 'x'.repeat(100)]));
    expect(refusal({ ...GOOD, ...many }).length).toBeLessThan(1000);
    expect(refusal({ ...GOOD, heightM: 'x'.repeat(1e6) }).length).toBeLessThan(500);
    expect(refusal('['.repeat(200_000))).toMatch(/van\.json/);
    expect(refusal('['.repeat(5000) + ']'.repeat(5000))).toMatch(/van\.json/);
  });

  it('is never accepted from anything but a card, and reading never throws', () => {
    fc.assert(
      fc.property(fc.oneof(fc.json(), fc.string()), (text) => {
        expect(readVehicle(text, 'van.json').ok).toBe(false);
      }),
    );
  });

  it('with one field replaced by anything is refused or read with that value', () => {
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(GOOD)), fc.jsonValue(), (field, value) => {
        const read = readCard({ ...GOOD, [field]: value });
        if (read.ok) expect(read.value).toEqual({ ...GOOD, [field]: value });
      }),
    );
  });
});
