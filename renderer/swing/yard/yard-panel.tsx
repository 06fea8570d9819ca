import type { YardLength } from '../../../geo/swing/yard/read-yard.ts';
import { USUAL_OFF_M } from '../../../geo/vehicle/lock/measured-lock.ts';
import { settings, vehicle } from '../../state/kept.ts';
import { YardResult } from './yard-result.tsx';
import {
  forgetMeasured,
  keepMeasured,
  typeYard,
  typeYardLength,
  yardDraft,
  yardRead,
  yardSaid,
} from './yard-state.ts';

const FIELDS: readonly {
  readonly name: YardLength;
  readonly letter?: string;
  readonly label: string;
  readonly hint: string;
  /** where feet and inches are read */
  readonly feet?: string;
}[] = [
  {
    name: 'rearWheelCircleM',
    letter: 'C',
    label: 'Across the inner rear tyre’s circle',
    hint: 'such as 8.15',
    feet: `such as 26'9"`,
  },
  { name: 'trackM', label: 'Rear track', hint: 'outside of one tyre to inside of the other' },
  {
    name: 'tailOutM',
    letter: 'B',
    label: 'From the line out to the tail’s farthest mark',
    hint: 'such as 0.46',
    feet: 'such as 18"',
  },
  {
    name: 'tailAheadM',
    letter: 'A',
    label: 'Along the line, from A to beside B',
    hint: 'a minus where B lies behind A',
  },
  { name: 'tapeOffM', label: 'The tape may be off by', hint: `${USUAL_OFF_M.tape} if left empty` },
  { name: 'chalkOffM', label: 'Each chalk mark may be off by', hint: `${USUAL_OFF_M.chalk} if left empty` },
];

/** What was written down in the yard, and what it comes to. */
export function YardPanel() {
  const [draft, of] = [yardDraft.value, vehicle.value];
  if (!draft || !of) return null;
  const said = yardSaid.value;
  return (
    <section class="swing-panel" aria-label="Measured in the yard">
      <div class="swing-head">
        <h2>Measure it in the yard</h2>
        <button type="button" onClick={() => window.print()}>
          Print the page
        </button>
      </div>
      <p class="swing-learn">
        Two people, a tape and chalk, ten minutes: then the figures are this vehicle’s own. Print the page, do
        what it says, and type in what you wrote down. B or C alone will do; C is the surer.
      </p>
      <form
        class="yard-form"
        onSubmit={(event) => {
          event.preventDefault();
          void keepMeasured();
        }}
      >
        {FIELDS.map((field) => (
          <YardField key={field.name} {...field} />
        ))}
        {of.card.rack && (
          <label class="swing-tick">
            <input
              type="checkbox"
              checked={draft.withRack}
              onChange={({ currentTarget }) => typeYard({ withRack: currentTarget.checked })}
            />{' '}
            the rack was on
          </label>
        )}
        <div class="yard-who">
          <label>
            Measured on{' '}
            <input
              type="date"
              value={draft.on}
              onInput={({ currentTarget }) => typeYard({ on: currentTarget.value })}
            />
          </label>
          <label>
            by{' '}
            <input
              type="text"
              size={6}
              maxLength={6}
              placeholder="initials"
              value={draft.by}
              onInput={({ currentTarget }) => typeYard({ by: currentTarget.value })}
            />
          </label>
        </div>
        <YardResult />
        <p role="status" class={said?.kind === 'fault' ? 'card-fault' : ''}>
          {said?.text ?? ''}
        </p>
        <div class="yard-buttons">
          <button type="submit" class="chief" disabled={yardRead.value?.card === undefined}>
            Keep on the card
          </button>
          {of.card.measured && (
            <button type="button" onClick={() => void forgetMeasured()}>
              Take off the card
            </button>
          )}
        </div>
      </form>
    </section>
  );
}

function YardField({ name, letter, label, hint, feet }: (typeof FIELDS)[number]) {
  const inFeet = settings.value.units === 'imperial';
  const fault = yardRead.value?.faults[name];
  const id = `yard-${name}`;
  return (
    <div class="yard-field">
      {letter ? (
        <span class="key-number" aria-hidden="true">
          {letter}
        </span>
      ) : (
        <span />
      )}
      <label for={id}>{label}</label>
      <span class="yard-entry">
        <input
          id={id}
          type="text"
          inputMode="text"
          size={8}
          autocomplete="off"
          value={yardDraft.value?.text[name] ?? ''}
          aria-invalid={fault !== undefined}
          aria-describedby={`${id}-says`}
          onInput={({ currentTarget }) => typeYardLength(name, currentTarget.value)}
        />{' '}
        m
      </span>
      <span id={`${id}-says`} class={fault ? 'small card-fault yard-says' : 'small soft yard-says'}>
        {fault ?? (inFeet ? (feet ?? hint) : hint)}
      </span>
    </div>
  );
}
