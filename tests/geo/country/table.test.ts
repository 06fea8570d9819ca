import { describe, expect, it } from 'vitest';
import { type Cited, COMMON_PRACTICE, FROM_MEMORY } from '../../../geo/country/cited.ts';
import { widthClassOf } from '../../../geo/country/default-widths.ts';
import { COUNTRY_CODES } from '../../../geo/country/rule.ts';
import { COUNTRY_TABLE, ruleFor } from '../../../geo/country/table.ts';

const rows = COUNTRY_CODES.map((code) => COUNTRY_TABLE[code]);
const all = [...rows, ruleFor(undefined).rule, ruleFor('GB-WLS').rule];

describe('the country table', () => {
  it('names a source in every cell, or says that it is from memory', () => {
    const cells = all.flatMap((rule) => [
      ...Object.values(rule).filter(
        (cell): cell is Cited<unknown> => typeof cell === 'object' && 'source' in cell,
      ),
      ...rule.bands.map(({ limits }) => limits),
    ]);
    expect(cells.length).toBeGreaterThan(all.length * 10);
    for (const { source } of cells) expect(source.text.length).toBeGreaterThan(10);
    const read = cells.filter(({ source }) => source !== FROM_MEMORY && source !== COMMON_PRACTICE).length;
    expect(read / cells.length).toBeGreaterThan(0.5);
  });

  it('keys each row by its own code', () => {
    for (const code of COUNTRY_CODES) expect(COUNTRY_TABLE[code].code).toBe(code);
  });

  it('gives bands from 0 kg upwards, and never more speed to more mass', () => {
    for (const { bands, name } of all) {
      expect(bands[0].overKg, name).toBe(0);
      for (let i = 1; i < bands.length; i++) {
        expect(bands[i]?.overKg, name).toBeGreaterThan(bands[i - 1]?.overKg ?? 0);
        for (const road of ['rural', 'dual', 'expressway', 'dualExpressway', 'motorway'] as const) {
          const kmh = (band: number) => {
            const limit = bands[band]?.limits.value[road] ?? 'none';
            return limit === 'none' ? Number.POSITIVE_INFINITY : limit;
          };
          expect(kmh(i), `${name} ${road}`).toBeLessThanOrEqual(kmh(i - 1));
        }
      }
    }
  });

  it('gives lanes and carriageways a motorhome fits, narrower on lesser roads', () => {
    for (const { widths } of all) {
      const { laneM, carriagewayM } = widths.value;
      expect(laneM.motorway).toBeGreaterThanOrEqual(laneM.secondary);
      expect(laneM.secondary).toBeGreaterThanOrEqual(laneM.unclassified);
      for (const metres of Object.values(laneM)) expect(metres).toBeGreaterThanOrEqual(2.4);
      for (const metres of Object.values(carriagewayM)) expect(metres).toBeGreaterThanOrEqual(3);
    }
  });

  it('counts slip roads and living streets with their kin, and the unknown with the narrowest', () => {
    expect(widthClassOf('trunk_link')).toBe('trunk');
    expect(widthClassOf('living_street')).toBe('residential');
    expect(widthClassOf('constructor')).toBe('track');
  });
});

describe('a country without a row', () => {
  it('gets cautious figures and a sentence that says so', () => {
    const { rule, note } = ruleFor('RO');
    expect(rule.code).toBe('other');
    expect(note).toContain('RO');
    expect(rule.widthSign.value).toBe('with mirrors');
    expect(rule.unsignedHeight.value.leastM).toBeUndefined();
  });

  it('drives on the left where it does', () => {
    expect(ruleFor('CY').rule.driveSide.value).toBe('left');
    expect(ruleFor('RO').rule.driveSide.value).toBe('right');
  });

  it('at sea is not known, and that is said; words that JavaScript objects know are no country', () => {
    expect(ruleFor(undefined).note).toContain('not known');
    expect(ruleFor('toString').rule.code).toBe('other');
  });
});
