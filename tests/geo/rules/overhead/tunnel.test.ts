import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { tunnel } from '../../../../geo/rules/overhead/tunnel.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import { askDrive, askRoad, COACHBUILT } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

const GAS: VehicleCard = { ...COACHBUILT, gasKg: 22 };
const said = (tags: Tags, country = 'AT', card = GAS) =>
  askRoad(tunnel, tags, { card, country }).map(({ level, folded }) => `${level}${folded ? ' folded' : ''}`);

describe('tunnels with gas on board', () => {
  it('a rule on dangerous goods is care, and never a bar: a vehicle’s own gas is no load', () => {
    expect(said({ tunnel: 'yes', hazmat: 'no' })).toEqual(['care']);
    expect(said({ tunnel: 'yes', 'hazmat:B': 'no' })).toEqual(['care']);
    const [found] = askRoad(tunnel, { tunnel: 'yes', hazmat: 'no' }, { card: GAS, country: 'AT' });
    expect(found).toMatchObject({ subject: 'tunnel', tags: { tunnel: 'yes', hazmat: 'no' } });
    expect(found?.say).toMatch(/22 kg of gas/);
  });

  it('a long tunnel is counted, a short one is not', () => {
    expect(said({ tunnel: 'yes' })).toEqual(['care folded']);
    const short = testMap([{ id: 1, nodes: ['0,0', '3,0'], tags: { highway: 'trunk', tunnel: 'yes' } }]);
    expect(askDrive(tunnel, short, [1], GAS, { country: 'AT' })).toEqual([]);
  });

  it('in the United States and Canada every tunnel is care: some bar propane', () => {
    expect(said({ tunnel: 'yes' }, 'US')).toEqual(['care']);
    expect(askRoad(tunnel, { tunnel: 'yes' }, { card: GAS, country: 'US' })[0]?.advice).toMatch(/propane/);
  });

  it('without gas on the card nothing is said', () => {
    expect(said({ tunnel: 'yes', hazmat: 'no' }, 'AT', COACHBUILT)).toEqual([]);
    expect(said({ tunnel: 'yes', hazmat: 'no' }, 'AT', { ...GAS, gasKg: 0 })).toEqual([]);
  });

  it.each<Tags>([
    { hazmat: 'no' },
    { tunnel: 'no', hazmat: 'no' },
    { tunnel: 'building_passage' },
    { tunnel: 'avalanche_protector' },
    { covered: 'yes' },
  ])('%o is no tunnel', (tags) => {
    expect(said(tags)).toEqual([]);
  });

  it('dangerous goods welcome is no rule', () => {
    expect(said({ tunnel: 'yes', hazmat: 'yes' })).toEqual(['care folded']);
  });
});
