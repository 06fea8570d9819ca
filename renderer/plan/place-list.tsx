import { useRef } from 'preact/hooks';
import { type PlanPlace, places, removePlace, reorderPlace, setStop } from '../state/plan.ts';
import { namePlanPlace } from './place-words.ts';

/** The places in the order they are driven. Alt with an arrow moves the one that has the focus; Delete removes it. */
export function PlaceList() {
  const list = useRef<HTMLOListElement>(null);
  const all = places.value;
  if (all.length === 0) return null;
  const focusSoon = (at: number) =>
    requestAnimationFrame(() => {
      const items = list.current?.querySelectorAll<HTMLElement>('[data-place]');
      const to = items?.[Math.max(0, Math.min(at, items.length - 1))];
      if (to) to.focus();
      else document.getElementById('plan-place')?.focus();
    });
  return (
    <ol
      ref={list}
      class="plan-places"
      aria-label="Places, in the order they are driven"
      onKeyDown={(event) => {
        const key = Number(event.target instanceof HTMLElement ? event.target.dataset['place'] : Number.NaN);
        const at = all.findIndex((each) => each.key === key);
        const by = event.altKey ? STEPS[event.key] : undefined;
        if (at < 0) return;
        if (by !== undefined) {
          event.preventDefault();
          reorderPlace(key, by);
          focusSoon(at + by);
        } else if (event.key === 'Delete') {
          removePlace(key);
          focusSoon(at);
        }
      }}
    >
      {all.map((place, at) => (
        <Item
          key={place.key}
          place={place}
          at={at}
          last={all.length - 1}
          onRemoved={() => focusSoon(at)}
          onMoved={(by) => focusSoon(at + by)}
        />
      ))}
    </ol>
  );
}

const STEPS: Readonly<Record<string, -1 | 1>> = { ArrowUp: -1, ArrowDown: 1 };

interface Props {
  readonly place: PlanPlace;
  readonly at: number;
  readonly last: number;
  onRemoved(): void;
  onMoved(by: number): void;
}

function Item({ place, at, last, onRemoved, onMoved }: Props) {
  const name = namePlanPlace(place);
  const which = <span class="unseen"> {name}</span>;
  const move = (by: -1 | 1) => {
    reorderPlace(place.key, by);
    onMoved(by);
  };
  const isEnd = at === 0 || at === last;
  return (
    <li class="plan-place">
      <button
        type="button"
        class="plan-name"
        data-place={place.key}
        aria-keyshortcuts="Alt+ArrowUp Alt+ArrowDown Delete"
      >
        <span class={isEnd || place.stop ? 'plan-number' : 'plan-number plan-through'}>{at + 1}</span>
        <span>
          <bdi>{name}</bdi>
          {place.what !== undefined && <span class="small soft"> {place.what}</span>}
        </span>
        <span class="small soft">{at === 0 ? 'start' : at === last ? 'end' : ''}</span>
      </button>
      {!isEnd && (
        <label class="small plan-stop">
          <input
            type="checkbox"
            checked={place.stop}
            onChange={({ currentTarget }) => setStop(place.key, currentTarget.checked)}
          />{' '}
          stop here{which}
        </label>
      )}
      <span class="plan-moves">
        <button type="button" disabled={at === 0} title="Earlier" onClick={() => move(-1)}>
          ↑<span class="unseen"> Earlier:{which}</span>
        </button>
        <button type="button" disabled={at === last} title="Later" onClick={() => move(1)}>
          ↓<span class="unseen"> Later:{which}</span>
        </button>
        <button
          type="button"
          onClick={() => {
            removePlace(place.key);
            onRemoved();
          }}
        >
          Remove{which}
        </button>
      </span>
    </li>
  );
}
