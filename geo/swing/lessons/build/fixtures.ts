import type { Point } from '../../point.ts';
import type { Fixture, FixtureRole } from '../scene/fixture.ts';

const POST_SIDE_M = 0.1;
/** An ordinary car. Metres; invented to be middling. */
export const CAR = { lengthM: 4.4, widthM: 1.8 } as const;
/** The chord of one piece of a drawn arc lies within this of it. Metres. */
const CHORD_OFF_M = 0.004;

/** A place of the ground, metres. */
export function at(xM: number, yM: number): Point {
  return { xM, yM };
}

/** A line that is hit. */
export function hard(kind: Fixture['kind'], role: FixtureRole, line: readonly Point[]): Fixture {
  return { kind, role, closed: false, line, hard: true };
}

/** A line that is crossed, not hit. */
export function painted(role: FixtureRole, line: readonly Point[]): Fixture {
  return { kind: 'lane line', role, closed: false, line, hard: false };
}

/** A rectangle along the axes. */
export function block(kind: Fixture['kind'], role: FixtureRole, from: Point, to: Point): Fixture {
  const line = [from, at(to.xM, from.yM), to, at(from.xM, to.yM)];
  return { kind, role, closed: true, line, hard: kind !== 'pitch' };
}

/** A post whose face nearest to y = 0 stands at `faceYM`. */
export function post(role: FixtureRole, xM: number, faceYM: number): Fixture {
  const away = faceYM < 0 ? -POST_SIDE_M : POST_SIDE_M;
  return block('post', role, at(xM - POST_SIDE_M / 2, faceYM), at(xM + POST_SIDE_M / 2, faceYM + away));
}

/** Points of an arc, both ends included; angles anticlockwise from x. */
export function arcPoints(centre: Point, radiusM: number, fromRad: number, toRad: number): Point[] {
  const pieceRad = Math.sqrt((8 * CHORD_OFF_M) / Math.max(radiusM, CHORD_OFF_M));
  const pieces = Math.max(1, Math.ceil(Math.abs(toRad - fromRad) / pieceRad));
  return Array.from({ length: pieces + 1 }, (_, piece) => {
    const angle = fromRad + ((toRad - fromRad) * piece) / pieces;
    return at(centre.xM + radiusM * Math.cos(angle), centre.yM + radiusM * Math.sin(angle));
  });
}

/** A full circle as a closed outline. */
export function disc(kind: Fixture['kind'], role: FixtureRole, centre: Point, radiusM: number): Fixture {
  return {
    kind,
    role,
    closed: true,
    line: arcPoints(centre, radiusM, 0, 2 * Math.PI).slice(0, -1),
    hard: true,
  };
}
