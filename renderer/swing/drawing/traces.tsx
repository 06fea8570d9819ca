import { useMemo } from 'preact/hooks';
import { type SweptStrip, sweptStrips, tracesOf } from '../../../geo/swing/lessons/read/traces.ts';
import type { Scene } from '../../../geo/swing/lessons/scene/scene.ts';
import { type GrowingPath, growingPath, pathOf } from './paths.ts';
import type { Tone } from './tone.ts';

/** Where the tail's outer corner, the inner rear wheel and the nose's outer corner have been, up to a sample. In metres. */
export function TracesDrawn({ scene, index, tone }: { scene: Scene; index: number; tone: Tone }) {
  const lines = useMemo(() => linesOf(scene), [scene]);
  return (
    <>
      <path class={`swing-swept swing-swept-${tone}`} d={sweptUpTo(lines.strips, index)} />
      <path class="trace trace-wheel" d={lines.wheel.upTo(index)} />
      <path
        class={scene.reversing ? 'trace trace-nose trace-watched' : 'trace trace-nose'}
        d={lines.nose.upTo(index)}
      />
      <path class={scene.reversing ? 'trace' : 'trace trace-watched'} d={lines.tail.upTo(index)} />
    </>
  );
}

function linesOf(scene: Scene): {
  readonly tail: GrowingPath;
  readonly wheel: GrowingPath;
  readonly nose: GrowingPath;
  readonly strips: readonly SweptStrip[];
} {
  const { tail, wheel, nose } = tracesOf(scene);
  return {
    tail: growingPath(tail),
    wheel: growingPath(wheel),
    nose: growingPath(nose),
    strips: sweptStrips(scene),
  };
}

function sweptUpTo(strips: readonly SweptStrip[], index: number): string {
  return strips
    .map(({ places, foot }) => {
      const run = places.filter((place) => place.index <= index).map(({ at }) => at);
      const [first, last] = [run[0], run.at(-1)];
      return first && last && run.length > 1 ? pathOf([foot(first), ...run, foot(last)], 'closed') : '';
    })
    .join('');
}
