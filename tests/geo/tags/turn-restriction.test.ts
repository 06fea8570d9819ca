import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import { turnRuleFor } from '../../../geo/tags/turn-restriction.ts';

describe('a turn restriction', () => {
  it.each<[Tags, 'yes' | 'no' | 'unsure']>([
    [{ restriction: 'no_left_turn' }, 'yes'],
    [{ restriction: 'only_straight_on' }, 'yes'],
    [{ restriction: 'no_u_turn' }, 'yes'],
    [{ restriction: 'no_entry' }, 'yes'],
    [{ 'restriction:motor_vehicle': 'no_left_turn' }, 'yes'],
    [{ 'restriction:hgv': 'no_left_turn' }, 'no'],
    [{ 'restriction:bus': 'no_left_turn' }, 'no'],
    [{ 'restriction:bicycle': 'give_way' }, 'no'],
    [{ restriction: 'no_left_turn', except: 'psv;bicycle' }, 'yes'],
    [{ restriction: 'no_left_turn', except: 'bus; motor_vehicle' }, 'no'],
    [{ restriction: 'no_left_turn', except: 'motorhome' }, 'no'],
    [{ restriction: 'no_left_turn', except: 'motorcar' }, 'unsure'],
    [{ 'restriction:conditional': 'no_left_turn @ (07:00-09:00)' }, 'unsure'],
    [{ 'restriction:hgv:conditional': 'no_left_turn @ (07:00-09:00)' }, 'no'],
    [{ restriction: 'no_left_turn', hour_on: '07:00', hour_off: '09:00' }, 'unsure'],
    [{ restriction: 'no_somersault' }, 'unsure'],
    [{}, 'no'],
  ])('tagged %j binds a motorhome: %s', (tags, binds) => {
    expect(turnRuleFor(tags).binds).toBe(binds);
  });
});

it('a turn forbidden but for some hours is free in them, and one lifted under a condition nobody can tell is free too', () => {
  const context = () =>
    [
      {
        vehicle: {},
        clock: { at: { year: 2027, month: 6, day: 16, hour: 9, minute: 0, offsetMinutes: 120 } },
      },
    ] as never;
  const lifted = { restriction: 'no_left_turn', 'restriction:conditional': 'none @ (08:00-10:00)' };
  expect(turnRuleFor({ 'restriction:conditional': 'none @ (08:00-10:00)' }, context).binds).toBe('no');
  expect(['no', 'unsure']).toContain(turnRuleFor(lifted, context).binds);
});
