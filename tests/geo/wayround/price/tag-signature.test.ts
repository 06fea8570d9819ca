import { describe, expect, it } from 'vitest';
import { speedFor } from '../../../../geo/drive/times/speed-for.ts';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { DEFAULT_MARGINS } from '../../../../geo/rules/rule.ts';
import { rulesFor } from '../../../../geo/wayround/price/ask-rules.ts';
import { paceOf } from '../../../../geo/wayround/price/pace.ts';
import {
  hasDirection,
  paceSignature,
  ruleSignature,
  tagSignature,
} from '../../../../geo/wayround/price/tag-signature.ts';
import { COACH_BUILT } from '../../../support/coach-built.ts';

const ROADS: readonly Tags[] = [
  { highway: 'residential', surface: 'asphalt' },
  { highway: 'unclassified', maxheight: '3.0', width: '2.4' },
  { highway: 'track', tracktype: 'grade4', incline: '14%' },
  { highway: 'primary', 'maxweight:conditional': '3.5 @ (22:00-06:00)', hgv: 'no' },
];
/** Keys left out of both texts, and keys that only the speed is asked about, with values as they are mapped. */
const NEUTRAL: Tags = {
  name: 'Mill Lane',
  ref: 'B 12',
  'destination:ref': 'A 7;A 2',
  'turn:lanes:forward': 'left|through',
  'change:lanes': 'no|yes',
  cycleway: 'lane',
  bicycle: 'no',
  foot: 'yes',
  horse: 'no',
  overtaking: 'no',
  priority_road: 'designated',
  'source:name': 'survey',
  note: 'no lorries here',
  lane_markings: 'no',
  'mtb:scale': '1',
  embankment: 'yes',
  lcn: 'yes',
};
const SPEED_ALONE: Tags = {
  maxspeed: '30',
  'maxspeed:conditional': '30 @ (22:00-06:00)',
  'source:maxspeed': 'DE:urban',
  'zone:traffic': 'DE:urban',
  'zone:maxspeed': 'DE:30',
  lit: 'yes',
  sidewalk: 'both',
};

function rulesSay(wayTags: Tags, directions = [true, false]) {
  const asked = {
    wayTags,
    kind: 0,
    junction: false,
    at: { lat: 52, lon: 10 },
    country: 'DE',
    moment: undefined,
  };
  const asker = { card: COACH_BUILT, margins: DEFAULT_MARGINS };
  return directions
    .flatMap((forward) =>
      (['access', 'others'] as const).flatMap((asking) =>
        rulesFor({ ...asked, forward, onClock: () => {} }, asker)('through', asking),
      ),
    )
    .map(({ subject, kind, level, spare }) => ({ subject, kind, level, spare }));
}

const speeds = (tags: Tags) =>
  [true, false].map((forward) => speedFor(tags, 'DE', COACH_BUILT, { forward }).kmh);

describe('tags that roads are told apart by', () => {
  it('leave out only what no rule reads', () => {
    for (const road of ROADS)
      for (const [key, value] of Object.entries({ ...NEUTRAL, ...SPEED_ALONE })) {
        const more = { ...road, [key]: value };
        expect(ruleSignature(more), key).toBe(ruleSignature(road));
        expect(rulesSay(more), key).toEqual(rulesSay(road));
      }
  });

  it('leave out only what no speed reads either, where speeds are asked', () => {
    for (const road of ROADS)
      for (const [key, value] of Object.entries(NEUTRAL)) {
        const more = { ...road, [key]: value };
        expect(tagSignature(more), key).toBe(tagSignature(road));
        expect(speeds(more), key).toEqual(speeds(road));
      }
    const slow = { ...ROADS[0], maxspeed: '10' };
    expect(tagSignature(slow)).not.toBe(tagSignature(ROADS[0] ?? {}));
  });

  it('hold every tag that a road’s pace is read from', () => {
    const more: readonly Tags[] = [
      { highway: 'secondary', oneway: 'yes', maxspeed: '70', 'maxspeed:hgv': '60' },
      { highway: 'living_street', 'zone:maxspeed': 'DE:30', 'width:effective': '2.7' },
      { highway: 'road', width: '2.8', 'parking:left': 'lane', 'parking:lane:both': 'parallel', lanes: '1' },
    ];
    for (const road of [...ROADS, ...more]) {
      const read = new Set<string>();
      const tags = new Proxy(road, {
        get: (target, key) => {
          if (typeof key === 'string') read.add(key);
          return Reflect.get(target, key);
        },
      });
      for (const country of ['DE', 'GB', undefined])
        for (const forward of [true, false]) paceOf({ tags, country, forward }, COACH_BUILT, 'widest');
      expect(read).toContain('highway');
      for (const key of read) expect(paceSignature({ [key]: 'yes' }), key).not.toBe('');
    }
  });

  it('tell of a direction wherever the two differ', () => {
    const more: readonly Tags[] = [
      { oneway: 'yes' },
      { oneway: '-1' },
      { 'motor_vehicle:backward': 'no' },
      { 'maxheight:forward': '2.5' },
      { incline: '22%' },
      { junction: 'roundabout' },
      { 'lanes:backward': '2' },
      { priority: 'backward' },
      { highway: 'motorway' },
      { 'maxspeed:backward': '20' },
    ];
    for (const road of [...ROADS, ...more.map((tags) => ({ ...ROADS[0], ...tags }))]) {
      const differs =
        JSON.stringify([rulesSay(road, [true]), speeds(road)[0]]) !==
        JSON.stringify([rulesSay(road, [false]), speeds(road)[1]]);
      expect(hasDirection(road) || !differs, JSON.stringify(road)).toBe(true);
    }
    expect(hasDirection(ROADS[0] ?? {})).toBe(false);
  });
});
