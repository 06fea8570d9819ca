import { describe, expect, it } from 'vitest';
import {
  builtFor,
  isMinorRoad,
  isSiteRoad,
  isSlipRoad,
  isTrunkRoad,
  RANK,
  rankOf,
  withoutSlip,
} from '../../../geo/tags/road-class.ts';

describe('a road by its class', () => {
  it('ranks from motorway to track, a slip with the road it serves', () => {
    expect(rankOf('motorway_link')).toBe(RANK.motorway);
    expect(rankOf('tertiary')).toBeLessThan(rankOf('residential'));
    expect(rankOf('service')).toBeLessThan(rankOf('track'));
  });

  it('ranks below all where it is none, or misspelt', () => {
    for (const highway of [undefined, 'footway', 'service_link', 'Motorway', 'constructor'])
      expect(rankOf(highway)).toBeGreaterThan(RANK.track);
  });

  it('is minor from tertiary down, and where its class is unknown', () => {
    expect(isMinorRoad({ highway: 'secondary_link' })).toBe(false);
    expect(isMinorRoad({ highway: 'tertiary' })).toBe(true);
    expect(isMinorRoad({})).toBe(true);
  });

  it('is a trunk road, a site road or a slip road by its own word', () => {
    expect(isTrunkRoad({ highway: 'trunk_link' })).toBe(true);
    expect(isTrunkRoad({ highway: 'primary' })).toBe(false);
    expect(isSiteRoad({ highway: 'track' })).toBe(true);
    expect(isSiteRoad({ highway: 'residential' })).toBe(false);
    expect(isSlipRoad({ highway: 'primary_link' })).toBe(true);
    expect(withoutSlip('primary_link')).toBe('primary');
  });

  it('is built for motor vehicles, for others, or for nobody knows whom', () => {
    expect(builtFor({ highway: 'living_street' })).toEqual({ kind: 'motor' });
    expect(builtFor({ highway: 'steps' })).toEqual({ kind: 'closed', what: 'steps' });
    expect(builtFor({ highway: 'skyway' })).toEqual({ kind: 'unknown' });
    expect(builtFor({ route: 'ferry' })).toEqual({ kind: 'ferry' });
  });
});
