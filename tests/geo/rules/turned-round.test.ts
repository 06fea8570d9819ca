import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { given } from '../../../geo/given.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { RULES } from '../../../geo/rules/index.ts';
import { ask } from '../../support/ask.ts';
import { driveOn, testMap } from '../../support/drive-on.ts';

const SWAPPED: Readonly<Record<string, string>> = { forward: 'backward', backward: 'forward' };

/** The tags of the same road drawn the other way round. */
function turned(tags: Tags): Tags {
  const entries = Object.entries(tags).map(([key, value]) => {
    const swapped = key
      .split(':')
      .map((part) => SWAPPED[part] ?? part)
      .join(':');
    const oneway: Readonly<Record<string, string>> = { yes: '-1', '-1': 'yes' };
    return [swapped, key === 'oneway' ? (oneway[value] ?? value) : value];
  });
  return Object.fromEntries(entries);
}

const tag = fc.tuple(
  fc.constantFrom(
    'maxheight',
    'maxheight:physical',
    'maxwidth',
    'maxlength',
    'maxweight',
    'maxaxleload',
    'motor_vehicle',
    'vehicle',
    'access',
    'maxgcweight',
  ),
  fc.constantFrom('', ':forward', ':backward', ':conditional', ':lanes:forward', ':backward:conditional'),
  fc.constantFrom('1.8', '2.5', '3.2', 'no', 'destination', 'none', 'default', 'what', '2|3', 'no @ wet'),
);
const tagsOf = fc
  .tuple(fc.array(tag, { maxLength: 5 }), fc.constantFrom(undefined, 'yes', '-1', 'no', 'reversible'))
  .map(([list, oneway]): Tags => {
    const tags = Object.fromEntries(list.map(([key, suffix, value]) => [key + suffix, value]));
    return { highway: 'residential', ...tags, ...given({ oneway }) };
  });

/** Levels, subjects and spans, which do not depend on how the road was drawn. */
function findings(nodes: readonly string[], tags: Tags, step: number) {
  const map = testMap([{ id: 1, nodes, tags }]);
  const drive = driveOn(map, [step]);
  return RULES.flatMap((subject) => ask(subject, map, drive))
    .map(({ level, subject, folded, spare }) => JSON.stringify({ level, subject, folded, spare }))
    .sort();
}

describe('a road drawn the other way round', () => {
  it('and driven against its drawing gives the same findings', () => {
    fc.assert(
      fc.property(tagsOf, (tags) => {
        expect(findings(['5,0', '0,0'], turned(tags), -1)).toEqual(findings(['0,0', '5,0'], tags, 1));
      }),
    );
  });
});
