import { describe, expect, it } from 'vitest';
import { map } from '../../../../geo/rules/road/map.ts';
import { ask, askDrive, askRoad } from '../../../support/ask.ts';
import { driveOn, testMap } from '../../../support/drive-on.ts';

const road = [{ id: 1, nodes: ['0,0', '5,0'], tags: { highway: 'residential' } }];

describe('the map', () => {
  it('has nothing to say of a drive on mapped roads', () => {
    expect(askDrive(map, testMap(road), [1])).toEqual([]);
  });

  it('says where there is no road under the route', () => {
    const [finding, ...more] = askDrive(map, testMap(road), [1, { offMapM: 1250 }, -1]);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ level: 'unknown', subject: 'map', wants: 'route', osm: [] });
    expect(finding?.folded).toBeUndefined();
    expect(finding?.say).toBe('1.3 km with no mapped road under the route: not checked.');
    expect((finding?.toM ?? 0) - (finding?.fromM ?? 0)).toBeCloseTo(1250, 6);
  });

  it('folds the yard away, not a long start off the map', () => {
    expect(askDrive(map, testMap(road), [{ offMapM: 40 }, 1])[0]).toMatchObject({
      level: 'unknown',
      folded: true,
    });
    expect(askDrive(map, testMap(road), [1, { offMapM: 40 }])[0]?.folded).toBe(true);
    expect(askDrive(map, testMap(road), [{ offMapM: 400 }, 1])[0]?.folded).toBeUndefined();
    expect(askDrive(map, testMap(road), [1, { offMapM: 40 }, -1])[0]?.folded).toBeUndefined();
  });

  it('folds nothing away of a drive that lies beside all roads, however short it is', () => {
    for (const offMapM of [10, 40, 90]) {
      expect(askDrive(map, testMap(road), [{ offMapM }])[0]?.folded).toBeUndefined();
      expect(askDrive(map, testMap([]), [{ offMapM }])[0]?.folded).toBeUndefined();
    }
  });

  it('without roads says that it does not cover the drive', () => {
    expect(askDrive(map, testMap([]), [{ offMapM: 5000 }])[0]?.say).toContain('The map has no roads here');
    expect(askDrive(map, testMap([]), [])).toMatchObject([{ level: 'unknown', subject: 'map' }]);
  });

  it('reports a break in the file, and where', () => {
    const findings = askDrive(map, testMap(road), [1, { gapM: 3200 }, -1]);
    expect(findings).toMatchObject([{ level: 'unknown', wants: 'route', at: { lat: 50, lon: 7 } }]);
    expect(findings[0]?.say).toContain('3.2 km');
    expect(findings[0]?.fromM).toBe(findings[0]?.toM);
  });

  it('reports parts filled in between sparse points, joined where they touch', () => {
    const roads = testMap(road);
    const guessed = [
      { fromM: 0, toM: 100 },
      { fromM: 100, toM: 250 },
      { fromM: 300, toM: 400 },
    ];
    expect(ask(map, roads, driveOn(roads, [1], { guessed }))).toMatchObject([
      { level: 'unknown', wants: 'route', fromM: 0, toM: 250 },
      { level: 'unknown', fromM: 300, toM: 400 },
    ]);
  });

  it('sums up many filled-in parts and folds each away', () => {
    const roads = testMap(road);
    const guessed = [0, 50, 100, 150, 200].map((fromM) => ({ fromM, toM: fromM + 20 }));
    const found = ask(map, roads, driveOn(roads, [1], { guessed }));
    const summary = found.find(({ toM, fromM }) => toM - fromM > 20);
    const parts = found.filter((one) => one !== summary);
    expect(summary).toMatchObject({ id: 'map:guessed', level: 'unknown', fromM: 0, toM: 220 });
    expect(summary?.say).toContain('100 m in 5 parts');
    expect(parts.map((one) => one.folded)).toEqual([true, true, true, true, true]);
  });

  it('says what its data may lack, and leaves other notes for the cautions', () => {
    const cut = testMap(road, {}, ['The server cut the answer short.']);
    const roads = { ...cut, roads: { ...cut.roads, notes: ['Two files were merged; none is missing.'] } };
    const findings = askDrive(map, roads, [1]);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ level: 'unknown', fromM: 0 });
  });

  it('tells of limits of a kind nobody knows', () => {
    expect(askRoad(map, { maxgcweight: '3' })).toMatchObject([
      { level: 'unknown', tags: { maxgcweight: '3' }, id: 'map:w1f:maxgcweight' },
    ]);
    expect(askRoad(map, { maxspeed: '50', maxstay: '2 h', 'turn:lanes': 'left|right' })).toEqual([]);
  });

  it('gives two breaks at one place two ids', () => {
    const findings = askDrive(map, testMap(road), [1, { gapM: 3000 }, -1, { gapM: 3000 }, 1]);
    expect(new Set(findings.map((one) => one.id)).size).toBe(2);
  });
});
