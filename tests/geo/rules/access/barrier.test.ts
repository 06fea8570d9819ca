import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { barrier } from '../../../../geo/rules/access/barrier.ts';
import { height } from '../../../../geo/rules/limits/height.ts';
import { width } from '../../../../geo/rules/limits/width.ts';
import { askDrive, askNode, askRoad } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

function level(tags: Tags): string | undefined {
  return askNode(barrier, tags)[0]?.level;
}

/** A barrier on the service road at the end of a residential one. */
function atTheGate(tags: Tags): string | undefined {
  const roads = testMap(
    [
      { id: 1, nodes: ['0,0', '3,0'], tags: { highway: 'residential' } },
      { id: 2, nodes: ['3,0', '4,0', '6,0'], tags: { highway: 'service' } },
    ],
    { '4,0': tags },
  );
  return askDrive(barrier, roads, [1, 2])[0]?.level;
}

describe('a barrier on the driven road', () => {
  it.each(['bollard', 'block', 'jersey_barrier', 'cycle_barrier'])('%s bars', (kind) => {
    expect(level({ barrier: kind })).toBe('barred');
  });

  it.each(['gate', 'lift_gate', 'swing_gate', 'chain', 'sliding_gate', 'yes', 'log', 'whatever'])(
    '%s is unknown',
    (kind) => {
      expect(level({ barrier: kind })).toBe('unknown');
    },
  );

  it.each(['cattle_grid', 'entrance', 'toll_booth', 'border_control', 'kerb', 'no'])('%s is open', (kind) => {
    expect(level({ barrier: kind })).toBeUndefined();
  });

  it.each([
    ['gate', 'A gate on the road; the map does not say whether it opens.'],
    ['chain', 'A chain on the road; the map does not say whether it opens.'],
    ['debris', 'A debris on the road; the map does not say whether vehicles get through.'],
    ['log', 'A log on the road; the map does not say whether vehicles get through.'],
    ['wall', 'A wall on the road; the map does not say whether vehicles get through.'],
    ['width_restrictor', 'A width restrictor on the road; the map does not give the width it leaves.'],
  ])('%s: only what can open is said to open', (kind, say) => {
    expect(askNode(barrier, { barrier: kind })[0]?.say).toBe(say.replace('A debris', 'Debris'));
  });

  it('a width restrictor with its width is for the width subject to judge', () => {
    for (const key of ['maxwidth', 'maxwidth:physical']) {
      expect(askNode(barrier, { barrier: 'width_restrictor', [key]: '2.2' })).toEqual([]);
      expect(askNode(width, { barrier: 'width_restrictor', [key]: '2.2' })[0]?.level).toBe('barred');
    }
    expect(askNode(barrier, { barrier: 'width_restrictor', width: '2.2' })).toEqual([]);
    expect(askNode(width, { barrier: 'width_restrictor', width: '2.2' })[0]?.level).toBe('unknown');
    expect(level({ barrier: 'width_restrictor', maxwidth: 'none' })).toBe('unknown');
    expect(level({ barrier: 'width_restrictor', access: 'yes' })).toBe('unknown');
  });

  it('that is unknown says what would settle it, and asks of no wall whether it is open', () => {
    for (const kind of ['gate', 'chain', 'log', 'debris', 'wall', 'whatever', 'height_restrictor'])
      expect(askNode(barrier, { barrier: kind })[0]?.wants, kind).toBeDefined();
    expect(askRoad(barrier, { barrier: 'wall' })[0]?.wants).toBeDefined();
    expect(askNode(barrier, { barrier: 'debris' })[0]?.advice).toBe(
      'Find out whether vehicles get through, or take another road.',
    );
  });

  it('with hours says that they are not settled', () => {
    expect(
      askNode(barrier, { barrier: 'gate', 'access:conditional': 'yes @ (06:00-20:00)' })[0]?.say,
    ).toMatch(/^A gate on the road\. Whether it is open when you pass is not settled: /);
  });

  it('is overridden by access mapped on it', () => {
    expect(level({ barrier: 'bollard', motor_vehicle: 'yes' })).toBeUndefined();
    expect(level({ barrier: 'gate', access: 'yes' })).toBeUndefined();
    expect(level({ barrier: 'gate', access: 'no' })).toBe('barred');
    expect(level({ barrier: 'cattle_grid', motor_vehicle: 'no' })).toBe('barred');
    expect(level({ barrier: 'gate', bicycle: 'yes', foot: 'yes' })).toBe('unknown');
    expect(level({ barrier: 'bollard', bicycle: 'yes', foot: 'yes' })).toBe('barred');
    expect(level({ barrier: 'gate', access: 'no', motorhome: 'yes' })).toBeUndefined();
  });

  it('that is shut by its kind stays shut under a further word that closes', () => {
    for (const more of [{ motorcar: 'no' }, { 'motorcar:both_ways': 'no' }, { 'motor_vehicle:odd': 'no' }])
      expect(askNode(barrier, { barrier: 'bollard', ...more } as Tags).map((one) => one.level)).toEqual([
        'barred',
      ]);
    expect(level({ barrier: 'bollard', 'motor_vehicle:conditional': 'no @ (22:00-06:00)' })).toBe('barred');
    expect(level({ barrier: 'bollard', 'motor_vehicle:conditional': 'no @ ((' })).toBe('barred');
  });

  it('that lets cars through may let a motorhome through', () => {
    for (const value of ['yes', 'destination', 'private'])
      expect(askNode(barrier, { barrier: 'bollard', motorcar: value })).toMatchObject([
        { level: 'unknown', wants: 'sign' },
      ]);
  });

  it('with no figure and closed is closed, beside its missing figure', () => {
    for (const kind of ['height_restrictor', 'width_restrictor'])
      expect(askNode(barrier, { barrier: kind, access: 'no' }).map((one) => one.level)).toEqual([
        'unknown',
        'barred',
      ]);
  });

  it('that is private bars in passing and is unknown on the way into the site where the drive ends', () => {
    expect(level({ barrier: 'gate', access: 'private' })).toBe('barred');
    expect(atTheGate({ barrier: 'gate', access: 'private' })).toBe('unknown');
    expect(atTheGate({ barrier: 'lift_gate', access: 'customers' })).toBeUndefined();
  });

  it('with a mapped gap is for the width subject to judge', () => {
    for (const key of ['maxwidth', 'maxwidth:physical']) {
      expect(askNode(barrier, { barrier: 'bollard', [key]: '2.2' })).toEqual([]);
      expect(askNode(width, { barrier: 'bollard', [key]: '2.2' })[0]?.level).toBe('barred');
      expect(askNode(width, { barrier: 'bollard', [key]: '3' })).toEqual([]);
    }
    expect(askNode(width, { barrier: 'bollard', maxwidth: 'wide' })[0]?.level).toBe('unknown');
  });

  it('with a plain width is open to doubt only where the vehicle would fit', () => {
    expect(level({ barrier: 'bollard', width: '3.2' })).toBe('unknown');
    expect(level({ barrier: 'bollard', width: '0.2' })).toBe('barred');
  });

  it('that opens by the hour is judged at the minute of passing', () => {
    const tags = { barrier: 'bollard', 'motor_vehicle:conditional': 'yes @ (06:00-10:00)' };
    const at = (leaveAt: string) => askNode(barrier, tags, { leaveAt });
    expect(askNode(barrier, tags)).toMatchObject([
      { level: 'unknown', wants: 'time', kind: 'bollard', tags },
    ]);
    expect(askNode(barrier, tags)[0]?.say).toContain('06:00 to 10:00');
    expect(at('2027-06-16T08:00')).toEqual([]);
    expect(at('2027-06-16T12:00')).toMatchObject([
      {
        level: 'barred',
        tags,
        advice: 'Take another road. Free from Thursday 06:00.',
        opensAt: '2027-06-17T06:00',
      },
    ]);
    const gate = { barrier: 'gate', 'access:conditional': 'yes @ (06:00-20:00)' };
    expect(askNode(barrier, gate, { leaveAt: '2027-06-16T21:00' })).toMatchObject([
      { level: 'unknown', opensAt: '2027-06-17T06:00' },
    ]);
    expect(
      askNode(
        barrier,
        { barrier: 'gate', access: 'yes', 'access:conditional': 'no @ (20:00-08:00)' },
        { leaveAt: '2027-06-16T21:00' },
      ),
    ).toMatchObject([{ level: 'barred', advice: 'Take another road. Free from Thursday 08:00.' }]);
  });

  it('under a condition nobody can read is unknown with its text', () => {
    expect(level({ barrier: 'bollard', 'motor_vehicle:conditional': 'yes @ (market days)' })).toBe('unknown');
    expect(level({ barrier: 'cattle_grid', 'motor_vehicle:conditional': 'no @ ((' })).toBe('unknown');
  });

  it('drawn along the road itself is unknown unless it is of an open kind', () => {
    const along = (kind: string) => askRoad(barrier, { barrier: kind }).map((one) => one.level);
    expect(along('wall')).toEqual(['unknown']);
    expect(along('gate')).toEqual(['unknown']);
    expect(along('toll_booth')).toEqual([]);
    expect(along('kerb')).toEqual([]);
  });

  it('that is locked says so', () => {
    expect(askNode(barrier, { barrier: 'gate', locked: 'yes' })[0]?.say).toContain('locked');
  });

  it('is passed once, at its place, and again on the way back', () => {
    const roads = testMap([{ id: 1, nodes: ['0,0', '2,0', '5,0'], tags: { highway: 'residential' } }], {
      '2,0': { barrier: 'gate' },
    });
    const findings = askDrive(barrier, roads, [1, -1]);
    expect(findings.map((one) => one.id)).toEqual(['barrier:n1002', 'barrier:n1002#2']);
    expect(findings[0]?.fromM).toBe(findings[0]?.toM);
    expect(findings[1]?.fromM).toBeCloseTo(800, 0);
  });

  it('between two ways is one barrier', () => {
    const roads = testMap(
      [
        { id: 1, nodes: ['0,0', '2,0'], tags: { highway: 'residential' } },
        { id: 2, nodes: ['2,0', '5,0'], tags: { highway: 'residential' } },
      ],
      { '2,0': { barrier: 'bollard' } },
    );
    expect(askDrive(barrier, roads, [1, 2]).map((one) => one.level)).toEqual(['barred']);
  });

  it('mapped on a junction may stand on the side road', () => {
    const roads = testMap(
      [
        { id: 1, nodes: ['0,0', '2,0', '5,0'], tags: { highway: 'residential' } },
        { id: 2, nodes: ['2,0', '2,2'], tags: { highway: 'footway' } },
      ],
      { '2,0': { barrier: 'bollard' } },
    );
    expect(askDrive(barrier, roads, [1])[0]).toMatchObject({ level: 'unknown', wants: 'sign' });
  });

  it('on the side road is none of ours', () => {
    const roads = testMap(
      [
        { id: 1, nodes: ['0,0', '2,0', '5,0'], tags: { highway: 'residential' } },
        { id: 2, nodes: ['2,0', '2,1', '2,2'], tags: { highway: 'footway' } },
      ],
      { '2,1': { barrier: 'bollard' } },
    );
    expect(askDrive(barrier, roads, [1])).toEqual([]);
  });
});

describe('a height bar', () => {
  it('without a figure is unknown', () => {
    expect(level({ barrier: 'height_restrictor' })).toBe('unknown');
    expect(level({ barrier: 'height_restrictor', maxheight: 'default' })).toBe('unknown');
    expect(level({ barrier: 'height_restrictor', access: 'yes' })).toBe('unknown');
  });

  it('met again on the way back is said to be the same', () => {
    const roads = testMap([{ id: 1, nodes: ['0,0', '2,0', '5,0'], tags: { highway: 'service' } }], {
      '2,0': { barrier: 'height_restrictor', maxheight: '2.5' },
    });
    const said = askDrive(height, roads, [1, -1]).map(({ say }) =>
      say.endsWith('The drive comes here again.'),
    );
    expect(said).toEqual([false, true]);
  });

  it('with a figure is for the height subject to judge', () => {
    const bar = { barrier: 'height_restrictor', maxheight: '2.1' };
    expect(askNode(barrier, bar)).toEqual([]);
    expect(askNode(height, bar)[0]?.level).toBe('barred');
    expect(askNode(height, { ...bar, maxheight: '4' })).toEqual([]);
    expect(askNode(height, { ...bar, maxheight: 'low' })[0]?.level).toBe('unknown');
  });
});
