import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../../geo/load/list/presets.ts';
import { LIQUID_FACTS } from '../../../../geo/vehicle/liquids.ts';

describe('masses to begin with', () => {
  it('each have a source, an id of their own and a mass that can be', () => {
    expect(new Set(PRESETS.map(({ id }) => id)).size).toBe(PRESETS.length);
    for (const { massKg, source } of PRESETS) {
      expect(massKg).toBeGreaterThan(0);
      expect(source).not.toBe('');
    }
    for (const { kgPerL, source } of Object.values(LIQUID_FACTS)) {
      expect(kgPerL).toBeGreaterThan(0.4);
      expect(source).not.toBe('');
    }
  });
});
