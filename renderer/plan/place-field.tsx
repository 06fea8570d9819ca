import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { clip, counted } from '../../geo/units/text.ts';
import { putPlace } from '../state/plan.ts';
import { type FoundPlace, findTyped, type Typed } from './find-place.ts';

const SETTLE_MS = 200;
const LIST = 'plan-found';
const optionId = (at: number) => `${LIST}-${at}`;

/** A place by name, or by coordinates. Arrows go through what is found, Enter puts it. */
export function PlaceField() {
  const text = useSignal('');
  const typed = useSignal<Typed | undefined>(undefined);
  const active = useSignal(0);
  const search = useRef<AbortController>(undefined);
  useEffect(() => () => search.current?.abort(), []);

  const look = async (wanted: string, waitMs: number): Promise<Typed | undefined> => {
    search.current?.abort();
    const stop = new AbortController();
    search.current = stop;
    await new Promise((resolve) => setTimeout(resolve, waitMs));
    if (stop.signal.aborted) return undefined;
    const found = await findTyped(wanted, stop.signal);
    if (stop.signal.aborted) return undefined;
    active.value = 0;
    typed.value = found;
    return found;
  };
  const put = (place: { lat: number; lon: number; name?: string }) => {
    search.current?.abort();
    putPlace({ ...place, stop: true });
    text.value = '';
    typed.value = undefined;
  };
  const take = ({ lat, lon, name }: FoundPlace) => put({ lat, lon, name });
  const found = typed.value?.kind === 'places' ? typed.value.places : [];
  const enter = async () => {
    const now = typed.value ?? (await look(text.value, 0));
    if (now?.kind === 'coordinates') put({ lat: now.lat, lon: now.lon });
    else if (now?.kind === 'places') {
      const chosen = now.places[active.value];
      if (chosen) take(chosen);
    }
  };
  return (
    <div class="plan-field">
      <label for="plan-place">A place by name, or coordinates like 54.1, 9.2</label>
      <input
        id="plan-place"
        type="text"
        role="combobox"
        autocomplete="off"
        spellcheck={false}
        maxLength={100}
        aria-autocomplete="list"
        aria-expanded={found.length > 0}
        aria-controls={LIST}
        aria-activedescendant={found.length > 0 ? optionId(active.value) : undefined}
        aria-describedby="plan-told"
        value={text.value}
        onInput={({ currentTarget }) => {
          text.value = currentTarget.value;
          typed.value = undefined;
          void look(currentTarget.value, SETTLE_MS);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') void enter();
          else if (event.key === 'Escape' && typed.value) typed.value = undefined;
          else if (event.key === 'ArrowDown') active.value = Math.min(found.length - 1, active.value + 1);
          else if (event.key === 'ArrowUp') active.value = Math.max(0, active.value - 1);
          else return;
          event.preventDefault();
        }}
      />
      <div id={LIST} role="listbox" aria-label="Places found" class="plan-found" hidden={found.length === 0}>
        {found.map((place, at) => (
          <Option key={optionId(at)} place={place} at={at} active={at === active.value} take={take} />
        ))}
      </div>
      <p id="plan-told" class="small" role="status">
        {typed.value && sayTyped(typed.value)}
      </p>
    </div>
  );
}

interface OptionProps {
  readonly place: FoundPlace;
  readonly at: number;
  readonly active: boolean;
  take(place: FoundPlace): void;
}

/** The field keeps the focus and hears the keys: an option hears the pointer alone. */
function Option({ place, at, active, take }: OptionProps) {
  return (
    <div
      id={optionId(at)}
      role="option"
      tabIndex={-1}
      aria-selected={active}
      class={active ? 'plan-option plan-option-active' : 'plan-option'}
      onPointerDown={(event) => {
        event.preventDefault();
        take(place);
      }}
    >
      <bdi>{clip(place.name, 60)}</bdi>
      <span class="small soft">
        {' '}
        {place.what}
        {place.in !== undefined && `, ${clip(place.in, 40)}`}
      </span>
    </div>
  );
}

function sayTyped(typed: Typed): string {
  switch (typed.kind) {
    case 'problem':
      return typed.say;
    case 'coordinates':
      return `Enter puts the place at ${typed.lat}, ${typed.lon}.`;
    case 'places':
      return `${counted(typed.places.length, 'place')} found. Enter puts the one marked.`;
  }
}
