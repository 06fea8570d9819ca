import { expect, it } from 'vitest';
import type { Drive, Leg } from '../../../geo/drive/drive.ts';
import { lineBetween } from '../../../geo/drive/line-between.ts';
import { roadsFrom } from '../../support/build-roads.ts';

it('a line between two distances looks at the legs there, not at all of a long drive', () => {
  const roads = roadsFrom({ nodes: { a: [52, 8], b: [52, 8.001] }, ways: [{ id: 1, refs: ['a', 'b'] }] });
  const legs = Array.from({ length: 10_000 }, (_, i): Leg => {
    const [fromM, toM] = [60 * i, 60 * (i + 1)];
    return { kind: 'stretch', way: 0, forward: true, alongFromM: 0, alongToM: 60, fromM, toM };
  });
  let looks = 0;
  const counted = new Proxy(legs, {
    get(target, name, receiver) {
      looks++;
      return Reflect.get(target, name, receiver);
    },
  });
  const drive: Drive = { lengthM: 600_000, legs: counted, guessed: [], doubtful: [], brokenTurns: [] };
  expect(lineBetween(drive, roads, 300_010, 300_050)).toHaveLength(2);
  expect(looks).toBeLessThan(200);
});
