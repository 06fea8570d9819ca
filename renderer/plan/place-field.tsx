import './place-field.css';
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { clip, counted } from '../../geo/units/text.ts';
import { type FoundPlace, findTyped, type Typed } from './find-place.ts';

const SETTLE_MS = 200;

/** A place somebody has chosen. */
export interface ChosenPlace {
  readonly lat: number;
  readonly lon: number;
  readonly name?: string;
  readonly what?: string;
}

interface FieldProps {
  /** of the field; others of its parts are told apart by it */
  readonly id: string;
  readonly label: string;
  readonly placeholder?: string;
  put(place: ChosenPlace): void;
}

/** A place by name, or by coordinates. Arrows go through what is found, Enter puts it. */
export function PlaceField({ id, label, placeholder, put: chosen }: FieldProps) {
  const list = `${id}-found`;
  const optionId = (at: number) => `${list}-${at}`;
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
    active.value = found?.kind === 'places' && !isMeant(found) ? -1 : 0;
    typed.value = found;
    return found;
  };
  const put = (place: ChosenPlace) => {
    search.current?.abort();
    chosen(place);
    text.value = '';
    typed.value = undefined;
  };
  const take = ({ lat, lon, name, what }: FoundPlace) => put({ lat, lon, name, what });
  const found = typed.value?.kind === 'places' ? typed.value.places : [];
  const enter = async () => {
    const seen = typed.value;
    const now = seen ?? (await look(text.value, 0));
    if (now?.kind === 'coordinates') put({ lat: now.lat, lon: now.lon });
    else if (now?.kind === 'places') {
      const marked = now.places[active.value];
      // what was never seen is taken only where it is called so
      if (marked && (seen || now.exact === 1)) take(marked);
    }
  };
  return (
    <div class="plan-field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        role="combobox"
        autocomplete="off"
        placeholder={placeholder}
        spellcheck={false}
        maxLength={100}
        aria-autocomplete="list"
        aria-expanded={found.length > 0}
        aria-controls={list}
        aria-activedescendant={found[active.value] ? optionId(active.value) : undefined}
        aria-describedby={`${id}-told`}
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
      <p id={`${id}-told`} class="small" role="status">
        {typed.value && sayTyped(typed.value)}
      </p>
      <div id={list} role="listbox" aria-label="Places found" class="plan-found" hidden={found.length === 0}>
        {found.map((place, at) => (
          <Option
            key={optionId(at)}
            id={optionId(at)}
            place={place}
            active={at === active.value}
            take={take}
          />
        ))}
      </div>
    </div>
  );
}

interface OptionProps {
  readonly id: string;
  readonly place: FoundPlace;
  readonly active: boolean;
  take(place: FoundPlace): void;
}

/** The field keeps the focus and hears the keys: an option hears the pointer alone. */
function Option({ id, place, active, take }: OptionProps) {
  return (
    <div
      id={id}
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
        {place.where !== undefined && `, ${place.where}`}
      </span>
    </div>
  );
}

type Places = Extract<Typed, { kind: 'places' }>;

/** Nobody knows which is meant of several that are called just so, or of several none of which is. */
function isMeant({ places, exact }: Places): boolean {
  return exact === 1 || places.length === 1;
}

function sayTyped(typed: Typed): string {
  switch (typed.kind) {
    case 'problem':
      return typed.say;
    case 'coordinates':
      return `Enter puts the place at ${typed.lat}, ${typed.lon}.`;
    case 'places':
      return typed.notSearched === undefined ? sayPlaces(typed) : `${typed.notSearched} ${sayPlaces(typed)}`;
  }
}

function sayPlaces(found: Places): string {
  if (isMeant(found)) return `${counted(found.places.length, 'place')} found. Enter puts the one marked.`;
  return `${found.exact > 1 ? `${found.exact} are` : 'None is'} called just so. Choose one: arrows mark it, Enter puts it.`;
}
