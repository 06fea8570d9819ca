import type { FixtureRole } from '../../../geo/swing/lessons/scene/fixture.ts';
import { shown } from '../state/shown.ts';

const LINES = [
  ['trace-watched', 'the tail’s outer corner'],
  ['trace-nose', 'the nose’s outer corner'],
  ['trace-wheel', 'the inner rear wheel'],
  ['swing-line', 'where the side was'],
] as const;

/** A mini-roundabout is mapped as one whose middle may be run over; the middle of a roundabout is kerbed. */
const CENTRES: Readonly<Partial<Record<FixtureRole, string>>> = {
  dome: 'raised centre: may be run over where there is no other way',
  island: 'raised centre with a kerb: not to be run over',
};

/** Which line is which, and what a raised centre is. */
export function Legend() {
  const centre = shown.value?.scene.fixtures.find(({ role }) => CENTRES[role] !== undefined)?.role;
  return (
    <ul class="swing-legend small">
      {LINES.map(([kind, say]) => (
        <li key={kind}>
          <svg width="30" height="8" aria-hidden="true">
            <path class={`trace ${kind}`} d="M0 4H30" />
          </svg>
          {say}
        </li>
      ))}
      {centre && (
        <li>
          <svg width="16" height="16" aria-hidden="true">
            <circle class={centre === 'dome' ? 'ground-dome' : 'ground-island'} cx="8" cy="8" r="7" />
            {centre === 'dome' && <circle class="ground-dome-ring" cx="8" cy="8" r="3.5" />}
          </svg>
          {CENTRES[centre]}
        </li>
      )}
    </ul>
  );
}
