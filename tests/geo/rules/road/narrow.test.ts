import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { narrow } from '../../../../geo/rules/road/narrow.ts';
import { ask, askDrive, askRoad, COACHBUILT } from '../../../support/ask.ts';
import { driveOn, testMap } from '../../../support/drive-on.ts';

/** Mirrors 2.75 m: with a car of 2.05 m and three gaps of 0.3 m two pass on 5.7 m, with 0.1 m on 5.1 m. */
const said = (tags: Tags) =>
  askRoad(narrow, tags).map(({ level, folded }) => `${level}${folded ? ' folded' : ''}`);

describe('room to pass on a two-way road', () => {
  it.each(['4.5', '4', '5.0', '3.5', '13\'0"'])('on %s m a car and this vehicle do not pass', (width) => {
    expect(said({ width })).toEqual(['care']);
  });

  it('on 5.5 m they pass with care, which is counted only; on 5.7 m freely', () => {
    expect(said({ width: '5.5' })).toEqual(['care folded']);
    expect(said({ width: '5.7' })).toEqual([]);
    expect(said({ width: '6.5' })).toEqual([]);
  });

  it('a slimmer vehicle passes where a wider does not', () => {
    const van = { ...COACHBUILT, widthM: 2.05, widthMirrorsM: 2.5, widthMirrorsFoldedM: 2.2 };
    expect(askRoad(narrow, { width: '5.0' }, { card: van })[0]?.folded).toBe(true);
    expect(askRoad(narrow, { width: '5.0' })[0]?.folded).toBeUndefined();
  });

  it('buses are thought of on main roads only, and counted only', () => {
    expect(said({ width: '5.9', highway: 'primary' })).toEqual(['care folded']);
    expect(said({ width: '5.9', highway: 'residential' })).toEqual([]);
    expect(said({ width: '6.5', highway: 'primary' })).toEqual([]);
  });

  it('cars parked on the carriageway take their room', () => {
    expect(said({ width: '6.5', 'parking:right': 'lane' })).toEqual(['care']);
    expect(said({ 'width:carriageway': '8', 'parking:lane:both': 'parallel' })).toEqual(['care']);
    expect(askRoad(narrow, { width: '6.5', 'parking:right': 'lane' })[0]?.say).toMatch(
      /4\.50 m wide beside parked/,
    );
    expect(said({ width: '8', 'parking:right': 'lane' })).toEqual([]);
    expect(said({ width: '6.5', 'parking:both': 'no' })).toEqual([]);
    expect(said({ width: '6.5', 'parking:both': 'street_side' })).toEqual([]);
    expect(said({ width: '6.5', 'parking:lane:both': 'no_parking' })).toEqual([]);
    expect(said({ 'width:effective': '6', 'parking:both': 'lane' })).toEqual([]);
  });

  it('is told in feet and yards where those are read', () => {
    const map = testMap([{ id: 1, nodes: ['0,0', '5,0'], tags: { highway: 'unclassified', width: '4' } }]);
    const [found] = ask(narrow, map, driveOn(map, [1]), COACHBUILT, { units: 'imperial' });
    expect(found?.say).toMatch(/^0\.3 mi of road 13'1" wide: a car and this vehicle \(9'1"\) do not pass/);
  });

  it('an estimate is called one', () => {
    expect(askRoad(narrow, { est_width: '4' })[0]?.say).toMatch(/estimated 4\.00 m wide/);
  });
});

describe('single track', () => {
  it('is none where the road is wide enough to pass, whatever its lanes', () => {
    expect(said({ lanes: '1', width: '6' })).toEqual([]);
    expect(askRoad(narrow, { lanes: '1', width: '5.5' })[0]?.say).toMatch(/pass with care/);
    expect(askRoad(narrow, { lanes: '1', width: '4.5' })[0]?.say).toBe(
      'Single track for 500 m, 4.50 m wide; no passing places are mapped.',
    );
  });

  it('one lane for both ways is care, with what is known of passing places', () => {
    expect(said({ lanes: '1' })).toEqual(['care']);
    expect(said({ lanes: '1.5' })).toEqual(['care']);
    expect(askRoad(narrow, { lanes: '1' })[0]?.say).toMatch(/Single track for 500 m; no passing places/);
    expect(askRoad(narrow, { lanes: '1', passing_places: 'yes' })[0]?.say).toMatch(
      /with passing places mapped/,
    );
  });

  it('passing places mapped as nodes are counted', () => {
    const map = testMap(
      [{ id: 1, nodes: ['0,0', '1,0', '3,0', '5,0'], tags: { highway: 'unclassified', lanes: '1' } }],
      { '1,0': { highway: 'passing_place' }, '3,0': { highway: 'passing_place' } },
    );
    expect(askDrive(narrow, map, [1])[0]?.say).toMatch(/with 2 passing places/);
  });

  it('a lane of three ways with a wider bit is one finding', () => {
    const map = testMap([
      { id: 1, nodes: ['0,0', '10,0'], tags: { highway: 'unclassified', lanes: '1' } },
      { id: 2, nodes: ['10,0', '10.8,0'], tags: { highway: 'unclassified' } },
      { id: 3, nodes: ['10.8,0', '20,0'], tags: { highway: 'unclassified', width: '4' } },
      { id: 4, nodes: ['20,0', '23,0'], tags: { highway: 'unclassified' } },
      { id: 5, nodes: ['23,0', '25,0'], tags: { highway: 'unclassified', lanes: '1' } },
    ]);
    const found = askDrive(narrow, map, [1, 2, 3, 4, 5]);
    expect(found.map(({ osm }) => osm.map(({ id }) => id))).toEqual([[1, 3], [5]]);
  });

  it.each<Tags>([
    { lanes: '1', oneway: 'yes' },
    { lanes: '1', oneway: '-1' },
    { lanes: '1', junction: 'roundabout' },
    { lanes: '2' },
    { lanes: 'one' },
    {},
    { highway: 'service' },
    { 'width:lanes': '2|2' },
    { maxwidth: '2.1' },
    { 'sidewalk:width': '1.2', 'cycleway:right:width': '1.5' },
  ])('%o is not', (tags) => {
    expect(said(tags)).toEqual([]);
  });

  it('a short single lane, the way into a yard, and a narrowing made to slow traffic are not shown', () => {
    const short = (tags: Tags) =>
      askDrive(narrow, testMap([{ id: 1, nodes: ['0,0', '0.4,0'], tags }]), [1]).map(
        ({ folded }) => folded ?? false,
      );
    expect(short({ highway: 'residential', lanes: '1' })).toEqual([true]);
    expect(short({ highway: 'service', width: '4' })).toEqual([true]);
    expect(said({ lanes: '1', traffic_calming: 'choker' })).toEqual([]);
  });
});

describe('roads hardly wider than the vehicle', () => {
  it('are care, one-way too', () => {
    expect(said({ width: '3', oneway: 'yes' })).toEqual(['care']);
    expect(askRoad(narrow, { width: '3' })[0]?.say).toMatch(
      /3\.00 m wide; over the mirrors the vehicle is 2\.75 m/,
    );
    expect(said({ width: '3.5', oneway: 'yes' })).toEqual([]);
    const [lane] = askRoad(narrow, { width: '3', passing_places: 'yes' });
    expect(lane?.say).toMatch(/vehicle is 2\.75 m, with passing places mapped\.$/);
    expect(lane?.advice).toMatch(/nobody can pass/);
    expect(askRoad(narrow, { width: '3', oneway: 'yes' })[0]?.advice).not.toMatch(/pass/);
  });

  it('mapped narrower than the vehicle at its narrowest is unknown, never barred', () => {
    expect(said({ width: '2' })).toEqual(['unknown']);
    expect(said({ width: '2', oneway: 'yes' })).toEqual(['unknown']);
    expect(askRoad(narrow, { width: '2' })).toMatchObject([{ kind: 'too narrow', wants: 'measure' }]);
    expect(said({ width: '2.4' })).toEqual(['care']);
  });

  it('parked cars alone never make it so', () => {
    expect(said({ width: '5', 'parking:both': 'lane' })).toEqual(['care']);
  });
});

describe('a width that cannot be read', () => {
  it('is unknown with its text as mapped, folded on a main road, and nothing where another key tells', () => {
    const unread = (tags: Tags) =>
      askRoad(narrow, tags).map(({ level, folded, tags: found }) => [level, folded ?? false, found]);
    expect(unread({ highway: 'unclassified', width: '~2.2' })).toEqual([
      ['unknown', false, { width: '~2.2' }],
    ]);
    expect(unread({ highway: 'primary', width: 'narrow' })).toEqual([['unknown', true, { width: 'narrow' }]]);
    expect(unread({ highway: 'primary', width: 'narrow', est_width: '8' })).toEqual([]);
  });
});
