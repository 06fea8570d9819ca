import { onGround, poseAt } from '../motion.ts';
import { boxesOf } from './outline.ts';
import type { Fixture, Point, Scene } from './scene.ts';

/** The most that a corner of the vehicle stands beyond a line on the ground. */
export interface OverLine {
  readonly overM: number;
  readonly travelM: number;
  /** "right rear corner", "rack" */
  readonly part: string;
  readonly fixture: Fixture;
}

/**
 * For each kerb and painted line that a corner passes: by how much. A corner is beyond a line when the line runs between
 * it and the rear axle's middle. The tail over a kerb touches nothing there, but posts and people may stand behind it.
 */
export function overLines(scene: Scene, parts: 'tail' | 'nose'): readonly OverLine[] {
  const { vehicle, motion, fixtures } = scene;
  const corners = boxesOf(vehicle).flatMap(({ what, backM, frontM, halfWidthM }) => {
    if (parts === 'nose' && what === 'rack') return [];
    const aheadM = parts === 'tail' ? backM : frontM;
    return (['left', 'right'] as const).map((side) => ({
      part: what === 'rack' ? 'rack' : `${side} ${parts === 'tail' ? 'rear' : 'front'} corner`,
      aheadM,
      leftM: side === 'left' ? halfWidthM : -halfWidthM,
    }));
  });
  const found: OverLine[] = [];
  for (const fixture of fixtures) {
    if (fixture.kind !== 'kerb' && fixture.kind !== 'lane line') continue;
    let best: OverLine | undefined;
    for (let index = 0; index < motion.xM.length; index++) {
      const pose = poseAt(motion, index);
      const axle = { xM: pose.xM, yM: pose.yM };
      for (const { part, aheadM, leftM } of corners) {
        const overM = beyond(axle, onGround(pose, aheadM, leftM), fixture.line);
        if (overM > (best?.overM ?? 0))
          best = { overM, travelM: motion.travelM[index] as number, part, fixture };
      }
    }
    if (best) found.push(best);
  }
  return found.sort((a, b) => b.overM - a.overM);
}

/** Distance of a place from a line that runs between it and the axle; 0 where none does. */
function beyond(axle: Point, place: Point, line: readonly Point[]): number {
  let crosses = false;
  for (let index = 1; index < line.length && !crosses; index++)
    crosses = cross(axle, place, line[index - 1] as Point, line[index] as Point);
  if (!crosses) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let index = 1; index < line.length; index++)
    least = Math.min(least, toSegment(place, line[index - 1] as Point, line[index] as Point));
  return least;
}

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const turn = (p: Point, q: Point, r: Point): number =>
    (q.xM - p.xM) * (r.yM - p.yM) - (q.yM - p.yM) * (r.xM - p.xM);
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

function toSegment(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.xM - a.xM, b.yM - a.yM];
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : ((p.xM - a.xM) * dx + (p.yM - a.yM) * dy) / squared;
  const t = Math.max(0, Math.min(1, along));
  return Math.hypot(p.xM - a.xM - t * dx, p.yM - a.yM - t * dy);
}
