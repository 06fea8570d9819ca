import { Doing } from '../look/doing.tsx';
import { shelfWork } from '../state/happening.ts';
import { shelfTold, shelfWaiting } from '../state/shelf.ts';

/** Within a dialog, which covers the line at the foot: work on the shelf, and what became of it, read out. */
export function ShelfProgress() {
  const told = shelfTold.value;
  return (
    <>
      {shelfWork.value && <Doing doing={shelfWork.value} more={shelfWaiting.value} />}
      <div role="alert">
        {told?.kind === 'error' && (
          <p class="problem">
            <bdi>{told.say}</bdi>
          </p>
        )}
      </div>
      <div role="status">
        {told?.kind === 'note' && (
          <p class="shelf-told">
            <bdi>{told.say}</bdi>
          </p>
        )}
      </div>
    </>
  );
}
