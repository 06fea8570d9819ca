import { describe, expect, it } from 'vitest';
import { overKind } from '../../../../geo/drive/above/over-kind.ts';
import { bridgeAbove } from '../../../../geo/rules/overhead/bridge-above.ts';
import { sayAbove, sayRoof } from '../../../../geo/rules/overhead/say-overhead.ts';
import { across, area, askAround, road } from '../../../support/ask-around.ts';

describe('what a thing would be if it lay over a road', () => {
  it.each([
    [{ highway: 'proposed' }, undefined],
    [{ highway: 'elevator' }, undefined],
    [{ railway: 'platform' }, undefined],
    [{ historic: 'city_gate' }, 'gateway'],
    [{ barrier: 'lych_gate' }, 'gateway'],
    [{ man_made: 'arch' }, 'gateway'],
    [{ man_made: 'gantry' }, 'gantry'],
    [{ man_made: 'goods_conveyor' }, 'pipe'],
    [{ man_made: 'bridge' }, 'structure'],
    [{ building: 'carport' }, 'roof'],
    [{ building: 'yes' }, 'building'],
    [{ 'building:part': 'roof', 'building:min_level': '1' }, 'roof'],
    [{ bridge: 'yes' }, 'structure'],
    [{ landuse: 'forest' }, undefined],
  ] as const)('of %o: %s', (tags, kind) => {
    expect(overKind(tags)).toBe(kind);
  });
});

describe('over the driven road', () => {
  const said = (...ways: Parameters<typeof askAround>[1][number][]) =>
    askAround(bridgeAbove, ways).map(({ kind, say }) => `${kind}: ${say}`);

  it('a gateway and a gantry are met, but not from the bridge above them', () => {
    expect(said(road({}), area(7, 2, -1, 2.2, 1, { historic: 'city_gate', building: 'yes' }))).toHaveLength(
      1,
    );
    expect(said(road({ bridge: 'yes', layer: '1' }), across(7, 2, { man_made: 'gantry' }))).toEqual([]);
    expect(said(road({}), across(7, 2, { man_made: 'gantry', layer: '-1' }))).toEqual([]);
  });

  it('a pipe is met where it runs above ground, and not where it is buried', () => {
    expect(said(road({}), across(7, 2, { man_made: 'pipeline', location: 'underground' }))).toEqual([]);
    expect(said(road({}), across(7, 2, { man_made: 'pipeline' }))).toEqual([]);
    expect(said(road({}), across(7, 2, { man_made: 'pipeline', location: 'overground' }))).toHaveLength(1);
  });
});

describe('what is over the road in words', () => {
  const facts = { units: 'metric' as const, neededM: 3.1, unsignedM: undefined };
  const say = (
    kind: 'road' | 'railway',
    tags: Record<string, string>,
    figure?: Parameters<typeof sayAbove>[1]['figure'],
  ) => sayAbove(kind, { tags, several: false, figure }, facts).say;

  it('says by what it is known that it lies over, and what it carries of its own', () => {
    expect(say('road', { layer: '1' })).toBe(
      'A road crosses over the road, by the layers mapped; no height is mapped on this road.',
    );
    const bridge = { bridge: 'yes', name: 'Long Bridge' };
    expect(say('road', bridge, { kind: 'limit', key: 'maxheight', text: '3' })).toBe(
      'A road bridge (Long Bridge) crosses over the road; no height is mapped on this road. The bridge itself carries "maxheight=3", which may be meant for the road below.',
    );
    expect(say('road', { layer: '1' }, { kind: 'limit', key: 'maxheight', text: '3' })).toContain(
      ' It carries "maxheight=3"',
    );
    expect(say('railway', bridge, { kind: 'unreadable underside', text: 'low' })).toContain(
      '"min_height=low" of its underside cannot be read.',
    );
    expect(
      say('railway', bridge, { kind: 'unreadable underside', text: '90', why: 'no bridge is that high' }),
    ).toContain('"min_height=90": no bridge is that high.');
    expect(say('railway', bridge, { kind: 'underside', text: '3.4', heightM: 3.4 })).toContain(
      'mapped at 3.40 m',
    );
  });

  it('of a roof names it, and which words stand in the place of a height', () => {
    const roof = (name: string | undefined, words: Record<string, string>) =>
      sayRoof('tunnel', { name, lengthM: 300, words }, { units: 'metric', neededM: 3.1, unsignedM: 5.03 });
    expect(roof('Hill Tunnel', {})).toMatchObject({
      say: 'A tunnel (Hill Tunnel) of 300 m; no height is mapped in it.',
    });
    expect(roof(undefined, { maxheight: 'default' }).say).toBe(
      'A tunnel of 300 m; "maxheight=default" gives no height for it.',
    );
    expect(roof(undefined, { maxheight: 'default', 'maxheight:physical': 'unknown' }).say).toContain(
      ' give no height for it.',
    );
    expect(roof(undefined, {}).advice).toContain('should leave at least 5.03 m');
  });
});
