import { expect, it } from 'vitest';
import type { Leg } from '../../../geo/drive/drive.ts';
import { refuseEndless } from '../../../geo/drive/refuse-endless.ts';

it('a drive that turns back more often than anybody drives is refused, and any other is not', () => {
  const leg: Leg = {
    ...{ kind: 'stretch', way: 0, forward: true },
    ...{ alongFromM: 0, alongToM: 1, fromM: 0, toM: 1 },
  } as const;
  expect(refuseEndless({ legs: new Array<Leg>(100_000).fill(leg) })).toBeUndefined();
  expect(refuseEndless({ legs: new Array<Leg>(249_999).fill(leg) })?.message).toContain('249999 times');
});
