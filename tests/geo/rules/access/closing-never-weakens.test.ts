import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rankOf } from '../../../../geo/report/level.ts';
import type { Finding } from '../../../../geo/report/report.ts';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { access } from '../../../../geo/rules/access/access.ts';
import { barrier } from '../../../../geo/rules/access/barrier.ts';
import type { SubjectRule } from '../../../../geo/rules/rule.ts';
import { askDrive } from '../../../support/ask.ts';
import { type TestMap, testMap } from '../../../support/drive-on.ts';

/** Everything that may close a road or a barrier, access and barriers together. */
const closures: SubjectRule = (input) => [...access(input), ...barrier(input)];

/** The worst level, 0 for barred; beyond the last where nothing is said. */
function worst(findings: readonly Finding[]): number {
  return Math.min(9, ...findings.map(({ level }) => rankOf(level)));
}

const street = { highway: 'residential' };

function passing(tags: Tags, node: Tags): TestMap {
  return testMap(
    [
      { id: 1, nodes: ['0,0', '1,0'], tags: street },
      { id: 2, nodes: ['1,0', '3,0', '5,0'], tags },
      { id: 3, nodes: ['5,0', '6,0'], tags: street },
    ],
    { '3,0': node },
  );
}

/** What is said of a road or a point that the drive passes, and of one that it ends at. */
function ranks(tags: Tags, node: Tags = {}): number[] {
  const map = passing(tags, node);
  return [worst(askDrive(closures, map, [1, 2, 3])), worst(askDrive(closures, map, [1, 2]))];
}

const KEYS = [
  'access',
  'vehicle',
  'motor_vehicle',
  'motorhome',
  'motorcar',
  'hgv',
  'access:both_ways',
  'motor_vehicle:both_ways',
  'motorcar:both_ways',
  'motor_vehicle:forward',
  'motorcar:forward',
  'vehicle:strange',
];
const HOURS = ['no @ (20:00-06:00)', 'no @ (06:00-20:00)', 'no @ (on market days)', 'no @ (('];
const closing = fc.oneof(
  fc.constantFrom(...KEYS).map((key): Tags => ({ [key]: 'no' })),
  fc
    .tuple(
      fc.constantFrom('access', 'motor_vehicle', 'motorcar', 'motor_vehicle:both_ways'),
      fc.constantFrom(...HOURS),
    )
    .map(([key, value]): Tags => ({ [`${key}:conditional`]: value })),
  fc.constantFrom('motor_vehicle', 'access', 'motorcar').map((key): Tags => ({ [`${key}:lanes`]: 'no|no' })),
);
const tagged = fc.dictionary(
  fc.constantFrom('access', 'vehicle', 'motor_vehicle', 'motorcar', 'foot', 'locked'),
  fc.constantFrom('yes', 'no', 'private', 'destination', 'permit'),
  { maxKeys: 2, noNullPrototype: true },
);
const kinds = fc.constantFrom(
  ...['bollard', 'block', 'jersey_barrier', 'gate', 'lift_gate', 'log', 'cattle_grid', 'toll_booth', 'yes'],
  ...['height_restrictor', 'width_restrictor', 'rising_bollard'],
);
const classes = fc.constantFrom('residential', 'service', 'track', 'footway', 'busway', 'layby');

describe('a further closing tag never weakens', () => {
  it('on a barrier', () => {
    fc.assert(
      fc.property(kinds, tagged, closing, (kind, tags, more) => {
        const before = { barrier: kind, ...tags };
        const after = { ...more, ...before };
        ranks(street, after).forEach((rank, i) => {
          expect(rank).toBeLessThanOrEqual(ranks(street, before)[i] ?? 9);
        });
      }),
      { numRuns: 100 },
    );
  });

  it('on a road, or a point of it', () => {
    fc.assert(
      fc.property(classes, tagged, closing, (highway, tags, more) => {
        const before = { highway, ...tags };
        ranks({ ...more, ...before }).forEach((rank, i) => {
          expect(rank).toBeLessThanOrEqual(ranks(before)[i] ?? 9);
        });
        ranks(street, { ...more, ...tags }).forEach((rank, i) => {
          expect(rank).toBeLessThanOrEqual(ranks(street, tags)[i] ?? 9);
        });
      }),
      { numRuns: 100 },
    );
  });
});
