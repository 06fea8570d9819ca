import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { access } from '../../../../geo/rules/access/access.ts';
import { barrier } from '../../../../geo/rules/access/barrier.ts';
import { axle } from '../../../../geo/rules/limits/axle.ts';
import { height } from '../../../../geo/rules/limits/height.ts';
import { length } from '../../../../geo/rules/limits/length.ts';
import { mass } from '../../../../geo/rules/limits/mass.ts';
import { width } from '../../../../geo/rules/limits/width.ts';
import { narrow } from '../../../../geo/rules/road/narrow.ts';
import { water } from '../../../../geo/rules/road/water.ts';
import type { SubjectRule } from '../../../../geo/rules/rule.ts';
import { askNode, askRoad } from '../../../support/ask.ts';

const OF: readonly (readonly [string, SubjectRule, readonly string[]])[] = [
  ['maxheight', height, ['0.4', '32', '380', '3800']],
  ['maxheight:physical', height, ['350']],
  ['maxwidth', width, ['250', '25', '0.2', '2500']],
  ['maxwidth:physical', width, ['210']],
  ['maxlength', length, ['1200', '1', '120']],
  ['maxweight', mass, ['7500', '0.0035', '3.5 kg', '180']],
  ['maxweightrating', mass, ['3500']],
  ['maxunladenweight', mass, ['2800']],
  ['maxaxleload', axle, ['8000', '80', '0.1']],
  ['maxbogieweight', axle, ['16000']],
];

describe('a limit that no road has is neither believed nor dropped', () => {
  it.each(OF.flatMap(([key, rule, texts]) => texts.map((text) => [key, text, rule] as const)))(
    '%s=%s is unknown, with its text as mapped',
    (key, text, rule) => {
      const found = askRoad(rule, { [key]: text });
      expect(found).toMatchObject([
        { level: 'unknown', kind: 'not believed', wants: 'sign', tags: { [key]: text } },
      ]);
      expect(found[0]?.say).toContain(`"${key}=${text}": `);
    },
  );

  it('for an hour, for some lanes, and on a sign too', () => {
    expect(askRoad(width, { 'maxwidth:conditional': '250 @ (22:00-06:00)' })[0]?.level).toBe('unknown');
    expect(askRoad(width, { oneway: 'yes', 'maxwidth:lanes': '250|250' })[0]?.level).toBe('unknown');
    expect(askRoad(width, { traffic_sign: 'DE:264[250]' })[0]?.level).toBe('unknown');
  });

  it('says what was likely meant', () => {
    expect(askRoad(width, { maxwidth: '250' })[0]?.say).toBe(
      '"maxwidth=250": 250.00 m is not believed as a width limit; 2.50 m if centimetres are meant.',
    );
  });

  it('as a condition settles nothing', () => {
    const closed = (condition: string) =>
      askRoad(access, { 'motor_vehicle:conditional': `no @ (${condition})` }).map(({ level }) => level);
    expect(closed('length>6')).toEqual(['barred']);
    expect(closed('length>12')).toEqual([]);
    expect(closed('length>1200')).toEqual(['unknown']);
    expect(closed('width>250')).toEqual(['unknown']);
  });
});

describe('a size of a road or a thing on it that none has', () => {
  it('is told at a gate, on a road and in a ford', () => {
    expect(askNode(width, { barrier: 'gate', width: '250' })).toMatchObject([
      { level: 'unknown', kind: 'not believed', tags: { width: '250' } },
    ]);
    expect(askRoad(narrow, { width: '220' })).toMatchObject([
      {
        level: 'unknown',
        say: '"width=220": 220.00 m is not believed as the width of a road; 2.20 m if centimetres are meant.',
      },
    ]);
    expect(askRoad(narrow, { width: '220', est_width: '9' })).toMatchObject([{ level: 'unknown' }]);
    expect(askNode(water, { ford: 'yes', depth: '30' })).toMatchObject([
      { level: 'unknown', wants: 'measure', tags: { depth: '30' } },
    ]);
  });

  it('opens no bollard, and neither does a word in place of a width', () => {
    const level = (tags: Tags) => askNode(barrier, { barrier: 'bollard', ...tags })[0]?.level;
    expect(level({ width: '300' })).toBe('barred');
    for (const maxwidth of ['none', 'default', 'unsigned']) expect(level({ maxwidth })).toBe('barred');
  });
});
