import type { Fixture } from '../../../geo/swing/lessons/scene/fixture.ts';
import type { Extent, Scene } from '../../../geo/swing/lessons/scene/scene.ts';
import type { Point } from '../../../geo/swing/point.ts';
import { besideLine, pathOf, sideOf } from './paths.ts';

/** How deep what stands beside the road is drawn, behind the line that counts. Metres. */
const DEEP_M = { kerb: 1.2, wall: 0.3, hedge: 0.9 } as const;

/**
 * What stands there, in metres. A kerb, wall or hedge is drawn behind its line, on the side away from the vehicle:
 * the line itself is what is touched.
 * @param start where the vehicle stands at the start
 */
export function FixturesDrawn({ scene: { fixtures, extent }, start }: { scene: Scene; start: Point }) {
  return (
    <>
      {fixtures.map((fixture) => (
        <Standing
          key={`${fixture.role} ${pathOf(fixture.line.slice(0, 3))}`}
          fixture={fixture}
          start={start}
          extent={extent}
        />
      ))}
    </>
  );
}

function Standing({ fixture, start, extent }: { fixture: Fixture; start: Point; extent: Extent }) {
  const { kind, closed } = fixture;
  const line = closed ? fixture.line : runningOn(fixture.line, extent);
  const name = kind.replace(' ', '-');
  if (kind === 'parked car') return <ParkedCar line={line} />;
  if (fixture.role === 'dome') return <Dome line={line} />;
  if (closed) return <path class={`ground-solid ground-${name}`} d={pathOf(line, 'closed')} />;
  if (kind === 'kerb' || kind === 'wall' || kind === 'hedge') {
    const behind = besideLine(line, -sideOf(line, start) * DEEP_M[kind]);
    return (
      <>
        <path class={`ground-deep ground-${name}`} d={pathOf([...line, ...behind.reverse()], 'closed')} />
        <path class={`ground-edge ground-edge-${name}`} d={pathOf(line)} />
      </>
    );
  }
  return <path class={`ground-line ground-${name}`} d={pathOf(line)} />;
}

/** A raised centre: its edge, and rings that rise to the middle, as heights are drawn. */
function Dome({ line }: { line: readonly Point[] }) {
  const middle = {
    xM: line.reduce((sum, { xM }) => sum + xM, 0) / line.length,
    yM: line.reduce((sum, { yM }) => sum + yM, 0) / line.length,
  };
  const ring = (share: number) =>
    pathOf(
      line.map(({ xM, yM }) => ({
        xM: middle.xM + (xM - middle.xM) * share,
        yM: middle.yM + (yM - middle.yM) * share,
      })),
      'closed',
    );
  return (
    <>
      <path class="ground-dome" d={ring(1)} />
      <path class="ground-dome-ring" d={`${ring(0.72)}${ring(0.46)}${ring(0.22)}`} />
    </>
  );
}

/** A rectangle with its windows, so that it is seen for a car. */
function ParkedCar({ line }: { line: readonly Point[] }) {
  const [a, b, c, d] = line;
  if (!a || !b || !c || !d) return <path class="ground-solid ground-parked-car" d={pathOf(line, 'closed')} />;
  const along = (share: number, inset: number): Point => ({
    xM: a.xM + (b.xM - a.xM) * share + (d.xM - a.xM) * inset,
    yM: a.yM + (b.yM - a.yM) * share + (d.yM - a.yM) * inset,
  });
  const glass = (from: number, to: number) =>
    pathOf([along(from, 0.12), along(from, 0.88), along(to, 0.8), along(to, 0.2)], 'closed');
  return (
    <>
      <path class="ground-solid ground-parked-car" d={pathOf(line, 'closed')} />
      <path class="ground-car-glass" d={`${glass(0.74, 0.62)}${glass(0.1, 0.2)}`} />
    </>
  );
}

/** A window may show more than the scene asks for. Metres. */
const RUN_ON_M = 60;

/** A line that leaves the scene does not stop at its edge. */
function runningOn(line: readonly Point[], extent: Extent): readonly Point[] {
  const [first, second] = line;
  const [before, last] = [line.at(-2), line.at(-1)];
  if (!first || !second || !before || !last) return line;
  return [
    ...(isOutside(first, extent) ? [beyond(second, first)] : []),
    ...line,
    ...(isOutside(last, extent) ? [beyond(before, last)] : []),
  ];
}

function isOutside({ xM, yM }: Point, { from, to }: Extent): boolean {
  return xM <= from.xM || xM >= to.xM || yM <= from.yM || yM >= to.yM;
}

function beyond(from: Point, to: Point): Point {
  const long = Math.hypot(to.xM - from.xM, to.yM - from.yM) || 1;
  const times = RUN_ON_M / long;
  return { xM: to.xM + (to.xM - from.xM) * times, yM: to.yM + (to.yM - from.yM) * times };
}
