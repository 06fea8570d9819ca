import { largest, smallest } from '../../../lists.ts';
import type { Point } from '../../point.ts';
import type { Fixture } from '../scene/fixture.ts';

interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Fixtures never change, and each is asked for at every sample. */
const known = new WeakMap<Fixture, Bounds>();

/** No part of a fixture is nearer to a place than this: the distance to the box round it. Metres. */
export function atLeastAwayM(fixture: Fixture, { xM, yM }: Point): number {
  let bounds = known.get(fixture);
  if (!bounds) {
    bounds = boundsOf(fixture.line);
    known.set(fixture, bounds);
  }
  return Math.hypot(
    Math.max(bounds.left - xM, 0, xM - bounds.right),
    Math.max(bounds.low - yM, 0, yM - bounds.high),
  );
}

function boundsOf(line: readonly Point[]): Bounds {
  const xs = line.map(({ xM }) => xM);
  const ys = line.map(({ yM }) => yM);
  return { left: smallest(xs), right: largest(xs), low: smallest(ys), high: largest(ys) };
}
