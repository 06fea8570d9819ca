import { keysOf } from '../../geo/swing/lessons/read/keys.ts';
import type { Scene } from '../../geo/swing/lessons/scene/scene.ts';
import { sayKey } from '../../geo/swing/lessons/tell/say-key.ts';
import { settings } from '../state/kept.ts';

/** The figures of a drawing, each with the number that stands at its place there. */
export function KeyList({ scene }: { scene: Scene }) {
  const { units } = settings.value;
  const keys = keysOf(scene);
  if (keys.length === 0) return null;
  return (
    <ol class="key-list">
      {keys.map((key) => {
        const { what, figure } = sayKey(key, units);
        return (
          <li key={key.key} value={key.key}>
            <span class="key-number" aria-hidden="true">
              {key.key}
            </span>
            <span>{what}</span> <b>{figure}</b>
          </li>
        );
      })}
    </ol>
  );
}
