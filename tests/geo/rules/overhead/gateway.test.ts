import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { gateway } from '../../../../geo/rules/overhead/gateway.ts';
import { askNode, COACHBUILT } from '../../../support/ask.ts';
import { askAround } from '../../../support/ask-around.ts';

describe('a city gate on the road', () => {
  const gate = (tags: Tags) =>
    askAround(gateway, [{ id: 1, nodes: ['0,0', '2,0', '5,0'], tags: { highway: 'primary' } }], {
      nodeTags: { '2,0': { historic: 'city_gate', ...tags } },
    });

  it('is unknown, and its sign is wanted', () => {
    expect(gate({})).toMatchObject([{ level: 'unknown', kind: 'gateway', wants: 'sign' }]);
  });

  it('is none where its height is mapped', () => {
    expect(gate({ maxheight: '3.4' })).toEqual([]);
  });
});

it('a city gate says nothing to a vehicle as low as a car', () => {
  const low = { ...COACHBUILT, heightM: 1.6 };
  const node = { historic: 'city_gate' };
  expect(askNode(gateway, node, { card: low })).toEqual([]);
  expect(askNode(gateway, node)).toHaveLength(1);
});
