import { sizeIn } from '../../geo/units/in-units.ts';
import { printKg, printTonnes } from '../../geo/units/print.ts';
import { CARD_NAME_LONGEST, NOTES_LONGEST } from '../../geo/vehicle/bounds.ts';
import type { Draft } from '../../geo/vehicle/form/draft.ts';
import { type Field, GROUPS, type Group } from '../../geo/vehicle/form/fields.ts';
import { bodyOf } from '../../geo/vehicle/form/place-note.ts';
import type { ReadDraft } from '../../geo/vehicle/form/read-draft.ts';
import { PlacesForm } from './places/places-form.tsx';

interface Props {
  readonly draft: Draft;
  readonly read: ReadDraft;
  change(draft: Draft): void;
}

/** Every figure of a card, each with how it was understood or what is wrong beside it. */
export function CardForm(props: Props) {
  const { draft, read, change } = props;
  return (
    <div class="card-form">
      <NameField {...props} />
      {GROUPS.map((group) => (
        <FieldGroup key={group.title} group={group} {...props} />
      ))}
      <PlacesForm
        rows={draft.places}
        read={read.places}
        body={bodyOf(read.figures)}
        change={(places) => change({ ...draft, places })}
      />
      <div class="card-field">
        <label for="card-notes">Notes</label>
        <textarea
          id="card-notes"
          rows={3}
          maxLength={NOTES_LONGEST}
          value={draft.notes}
          onInput={(event) => change({ ...draft, notes: event.currentTarget.value })}
        />
      </div>
    </div>
  );
}

function NameField({ draft, read, change }: Props) {
  return (
    <div class="card-field">
      <label for="card-name">Name</label>
      <input
        id="card-name"
        value={draft.name}
        maxLength={CARD_NAME_LONGEST}
        aria-invalid={read.faults.name !== undefined}
        aria-describedby="card-name-says"
        onInput={(event) => change({ ...draft, name: event.currentTarget.value })}
      />
      <p id="card-name-says" class="small card-fault">
        {read.faults.name ?? ''}
      </p>
    </div>
  );
}

function FieldGroup({ group, ...props }: Props & { group: Group }) {
  const { draft, change } = props;
  return (
    <fieldset>
      <legend>{group.title}</legend>
      {group.fields.map((field) => (
        <Figure key={field.key} field={field} {...props} />
      ))}
      {group.ticks.map(({ key, label }) => (
        <label key={key} class="card-tick">
          <input
            type="checkbox"
            checked={draft[key]}
            onChange={(event) => change({ ...draft, [key]: event.currentTarget.checked })}
          />{' '}
          {label}
        </label>
      ))}
    </fieldset>
  );
}

function Figure({ field, draft, read, change }: Props & { field: Field }) {
  const { key, label, unit, optional, hint } = field;
  const fault = read.faults[key];
  const figure = read.figures[key];
  const meant = read.meant[key];
  const says = figure === undefined ? '' : understood(figure, field);
  return (
    <div class="card-field">
      <label for={`card-${key}`}>
        {label} <span class="soft small">{optional ? `${unit}, if known` : unit}</span>
      </label>
      <input
        id={`card-${key}`}
        value={draft.text[key]}
        inputMode="text"
        autoComplete="off"
        aria-invalid={fault !== undefined}
        aria-describedby={`card-${key}-says`}
        onInput={(event) =>
          change({ ...draft, text: { ...draft.text, [key]: event.currentTarget.value.slice(0, 40) } })
        }
      />
      {meant && (
        <button
          type="button"
          class="meant"
          onClick={() => change({ ...draft, text: { ...draft.text, [key]: meant.text } })}
        >
          {meant.says}?
        </button>
      )}
      <p id={`card-${key}-says`} class={fault === undefined ? 'small soft' : 'small card-fault'}>
        {fault ?? [says, hint].filter(Boolean).join('; ')}
      </p>
    </div>
  );
}

function understood(figure: number, { unit, rounding }: Field): string {
  return unit === 'm' ? sizeIn('both', figure, rounding) : `${printKg(figure)}, ${printTonnes(figure)}`;
}
