import { clip } from '../../../geo/units/text.ts';
import { aside, cellsOf, cellsTold, drives, standing } from '../state/yard.ts';
import { Acknowledge, ChangesOf } from './changes.tsx';

/** More drives than these are looked at a part at a time. */
const MOST_SHOWN = 50;

/** The drives of which something is otherwise than somebody has seen it. */
export function ChangesList() {
  void cellsTold.value;
  const changed = drives.value.filter(({ id }) =>
    [...cellsOf(id).values()].some(({ changes }) => changes.length > 0),
  );
  const shown = changed.slice(0, MOST_SHOWN);
  if (changed.length === 0)
    return (
      <p>
        Nothing is otherwise than when it was last seen.
        {standing.value.stale > 0 && ' What is old has not been checked again yet.'}
      </p>
    );
  return (
    <>
      {shown.map(({ id, name }) => (
        <div key={id} class="yard-change">
          <h4>
            <button
              type="button"
              class="quiet"
              onClick={() => {
                aside.value = { kind: 'drive', id };
              }}
            >
              <bdi>{clip(name, 80)}</bdi>
            </button>
          </h4>
          <ChangesOf drive={id} />
        </div>
      ))}
      {changed.length > shown.length && (
        <p>and {changed.length - shown.length} more drives, shown once these are seen.</p>
      )}
      <Acknowledge drives={shown.map(({ id }) => id)} />
    </>
  );
}
