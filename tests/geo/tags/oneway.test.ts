import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import { onewayFor } from '../../../geo/tags/oneway.ts';

describe('a one-way road', () => {
  it.each<[Tags, 'yes' | 'no' | 'unsure', 'yes' | 'no' | 'unsure']>([
    [{}, 'yes', 'yes'],
    [{ oneway: 'yes' }, 'yes', 'no'],
    [{ oneway: 'true' }, 'yes', 'no'],
    [{ oneway: '1' }, 'yes', 'no'],
    [{ oneway: '-1' }, 'no', 'yes'],
    [{ oneway: 'reverse' }, 'no', 'yes'],
    [{ oneway: 'no' }, 'yes', 'yes'],
    [{ oneway: 'alternating' }, 'yes', 'yes'],
    [{ oneway: 'reversible' }, 'unsure', 'unsure'],
    [{ oneway: 'perhaps' }, 'unsure', 'unsure'],
    [{ junction: 'roundabout' }, 'yes', 'no'],
    [{ junction: 'roundabout', oneway: 'no' }, 'yes', 'yes'],
    [{ junction: 'circular' }, 'yes', 'unsure'],
    [{ highway: 'motorway' }, 'yes', 'no'],
    [{ highway: 'motorway', oneway: 'no' }, 'yes', 'yes'],
    [{ highway: 'motorway_link' }, 'yes', 'unsure'],
    [{ highway: 'motorway_link', oneway: 'no' }, 'yes', 'yes'],
    [{ oneway: 'yes', 'oneway:motor_vehicle': 'no' }, 'yes', 'yes'],
    [{ 'oneway:motor_vehicle': 'yes' }, 'yes', 'no'],
    [{ oneway: 'yes', 'oneway:bicycle': 'no', 'oneway:bus': 'no' }, 'yes', 'no'],
  ])('tagged %j may be driven forward: %s, backward: %s', (tags, forward, backward) => {
    expect(onewayFor({ tags, forward: true }).allowed).toBe(forward);
    expect(onewayFor({ tags, forward: false }).allowed).toBe(backward);
  });
});
