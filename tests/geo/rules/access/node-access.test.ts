import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { access } from '../../../../geo/rules/access/access.ts';
import { askDrive, askNode } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

const said = (tags: Tags) =>
  askNode(access, tags).map(({ level, folded }) => (folded === true ? `${level}, folded` : level));

describe('access mapped on a node of the driven road without a barrier', () => {
  it.each(['motorhome', 'motor_vehicle', 'vehicle', 'access'])('%s=no bars, as on a road', (key) => {
    expect(said({ [key]: 'no' })).toEqual(['barred']);
    expect(said({ [key]: 'private' })).toEqual(['barred']);
    expect(said({ [key]: 'yes' })).toEqual([]);
    expect(said({ [key]: 'discouraged' })).toEqual(['tight']);
    expect(said({ [key]: 'whatever' })).toEqual(['unknown']);
  });

  it('says so', () => {
    const [found] = askNode(access, { motor_vehicle: 'no', foot: 'yes' });
    expect(found).toMatchObject({ subject: 'access', tags: { motor_vehicle: 'no' }, fromM: found?.toM });
    expect(found?.osm[0]?.type).toBe('node');
    expect(found?.say).toBe('A point on the road: closed to motor vehicles (motor_vehicle=no).');
  });

  it('the most specific key wins, and conditions are judged', () => {
    expect(said({ access: 'no', motor_vehicle: 'yes' })).toEqual([]);
    expect(said({ ford: 'yes', motor_vehicle: 'agricultural' })).toEqual(['barred']);
    expect(said({ 'motor_vehicle:conditional': 'no @ (22:00-06:00)' })).toEqual(['unknown']);
    expect(said({ motorcar: 'no' })).toEqual(['unknown']);
  });

  it('under a misspelt key is unknown', () => {
    expect(said({ acess: 'no' })).toEqual(['unknown']);
    expect(said({ motorvehicle: 'private' })).toEqual(['unknown']);
    expect(said({ acess: 'yes' })).toEqual([]);
  });

  it('on a node with a barrier is the barrier subject’s', () => {
    expect(said({ barrier: 'gate', motor_vehicle: 'no' })).toEqual([]);
  });

  it('is quiet where it is said of those who cross, wait or go in there', () => {
    for (const tags of [
      { highway: 'crossing' },
      { highway: 'bus_stop' },
      { railway: 'crossing' },
      { public_transport: 'stop_position' },
      { amenity: 'parking_entrance' },
      { entrance: 'yes' },
    ] as Tags[]) {
      expect(said({ ...tags, access: 'no' })).toEqual([]);
      expect(said({ ...tags, access: 'private' })).toEqual([]);
      expect(said({ ...tags, motor_vehicle: 'no' })).toEqual(['unknown, folded']);
    }
    expect(said({ highway: 'stop', motor_vehicle: 'no' })).toEqual(['barred']);
    expect(said({ railway: 'level_crossing', vehicle: 'no' })).toEqual(['barred']);
    expect(said({ highway: 'crossing', bicycle: 'no', foot: 'yes' })).toEqual([]);
    expect(said({ highway: 'crossing', hgv: 'no' })).toEqual([]);
  });

  it('on a junction may be meant for the side road', () => {
    const map = testMap(
      [
        { id: 1, nodes: ['0,0', '3,0', '6,0'], tags: { highway: 'residential' } },
        { id: 2, nodes: ['3,0', '3,3'], tags: { highway: 'residential' } },
      ],
      { '3,0': { motor_vehicle: 'no' } },
    );
    const found = askDrive(access, map, [1]);
    expect(found.map(({ level }) => level)).toEqual(['unknown']);
    expect(found[0]?.say).toMatch(/junction/);
  });

  it('is open for those whose drive ends there', () => {
    const map = testMap(
      [
        { id: 1, nodes: ['0,0', '3,0'], tags: { highway: 'residential' } },
        { id: 2, nodes: ['3,0', '4,0', '6,0'], tags: { highway: 'service' } },
      ],
      { '4,0': { access: 'customers' } },
    );
    expect(askDrive(access, map, [1, 2])).toEqual([]);
  });
});
