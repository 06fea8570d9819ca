import { sizeIn } from '../../geo/units/in-units.ts';
import { printKg, printTonnes } from '../../geo/units/print.ts';
import { counted, listed } from '../../geo/units/text.ts';
import { CARD_NAME_LONGEST, type CardFigure, NOTES_LONGEST } from '../../geo/vehicle/bounds.ts';
import type { Draft } from '../../geo/vehicle/form/draft.ts';
import { type Field, GROUPS, type Group } from '../../geo/vehicle/form/fields.ts';
import { bodyOf } from '../../geo/vehicle/form/place-note.ts';
import type { ReadDraft } from '../../geo/vehicle/form/read-draft.ts';
import { MeantButtons } from '../look/meant-buttons.tsx';
import { PlacesForm } from './places/places-form.tsx';

interface Props {
  readonly draft: Draft;
  readonly read: ReadDraft;
  /** it is a new card: where its figures stand is told at once */
  readonly fresh: boolean;
  /** whether what is wrong at a field is said: once it was left, or the card was to be kept */
  said(field: CardFigure | 'name'): boolean;
  /** a field is left */
  leave(field: CardFigure | 'name'): void;
  change(draft: Draft): void;
}

/** Every figure of a card, each with how it was understood or what is wrong beside it. */
export function CardForm(props: Props) {
  const { draft, read, change } = props;
  return (
    <div class="card-form">
      <WhatIsNeeded open={props.fresh} />
      <NameField {...props} />
      {GROUPS.map((group) => (
        <FieldGroup key={group.title} group={group} {...props} />
      ))}
      <details class="card-group">
        <summary>{sayPlaces(draft)}</summary>
        <PlacesForm
          rows={draft.places}
          read={read.places}
          body={bodyOf(read.figures)}
          change={(places) => change({ ...draft, places })}
        />
      </details>
      <details class="card-group">
        <summary>Notes</summary>
        <div class="card-field">
          <label for="card-notes" class="unseen">
            Notes
          </label>
          <textarea
            id="card-notes"
            rows={3}
            maxLength={NOTES_LONGEST}
            value={draft.notes}
            onInput={(event) => change({ ...draft, notes: event.currentTarget.value })}
          />
        </div>
      </details>
    </div>
  );
}

/** The figures without which there is no card, and where they stand. */
function WhatIsNeeded({ open }: { open: boolean }) {
  return (
    <details class="card-group" open={open}>
      <summary>What a card needs, and where it stands</summary>
      <p class="small">Ten figures: the five that decide, E, F and G, both axle plates.</p>
      <ul class="small">
        <li>With a tape, on level ground and as it is driven, roof boxes on, mirrors out: A to G.</li>
        <li>
          On the maker’s plate, in a door frame or under the bonnet: the most it may weigh, then with a
          trailer, then axle 1 (front) and axle 2 (rear). A converter’s plate goes before it.
        </li>
        <li>In the papers: the most it may weigh, in European ones at F.1.</li>
        <li>On a weighbridge: the empty weight, axle by axle, for loads.</li>
      </ul>
    </details>
  );
}

function sayPlaces({ places }: Draft): string {
  const { seats, tanks, lockers } = places;
  const told = [
    counted(seats.length, 'seat'),
    counted(tanks.length, 'tank'),
    counted(lockers.length, 'locker'),
  ];
  return `Places for the load: ${listed(told)}`;
}

function NameField({ draft, read, said, leave, change }: Props) {
  const fault = said('name') ? read.faults.name : undefined;
  return (
    <div class="card-field">
      <label for="card-name">Name</label>
      <input
        id="card-name"
        value={draft.name}
        maxLength={CARD_NAME_LONGEST}
        required
        aria-invalid={fault !== undefined}
        aria-describedby="card-name-says"
        onInput={(event) => change({ ...draft, name: event.currentTarget.value })}
        onBlur={() => leave('name')}
      />
      <p id="card-name-says" class="small card-fault">
        {fault ?? ''}
      </p>
    </div>
  );
}

function FieldGroup({ group, ...props }: Props & { group: Group }) {
  if (group.folded)
    return (
      <details class="card-group">
        <summary>
          {group.title}
          <Needed group={group} read={props.read} />
        </summary>
        <Fields group={group} {...props} />
      </details>
    );
  return (
    <fieldset class="card-essentials">
      <legend>{group.title}</legend>
      <Fields group={group} {...props} />
    </fieldset>
  );
}

/** What a folded group still needs for the card to be one. */
function Needed({ group, read }: { group: Group; read: ReadDraft }) {
  const needed = group.fields.filter(({ key }) => read.faults[key] !== undefined).length;
  return needed === 0 ? null : <span class="small card-needed"> {counted(needed, 'figure')} to give</span>;
}

function Fields({ group, ...props }: Props & { group: Group }) {
  const { draft, change } = props;
  return (
    <div class="card-fields">
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
    </div>
  );
}

function Figure({ field, draft, read, said, leave, change }: Props & { field: Field }) {
  const { key, label, unit, optional, hint, letter } = field;
  const fault = said(key) ? read.faults[key] : undefined;
  const figure = read.figures[key];
  const says = figure === undefined ? '' : understood(figure, field);
  const type = (text: string) => change({ ...draft, text: { ...draft.text, [key]: text.slice(0, 40) } });
  return (
    <div class="card-field">
      <label for={`card-${key}`}>
        {letter !== undefined && (
          <span class="card-letter" aria-hidden="true">
            {letter}
          </span>
        )}
        {label} <span class="soft small">{optional ? `${unit}, if known` : unit}</span>
      </label>
      <input
        id={`card-${key}`}
        value={draft.text[key]}
        inputMode="text"
        autoComplete="off"
        required={!optional}
        aria-invalid={fault !== undefined}
        aria-describedby={`card-${key}-says`}
        onInput={(event) => type(event.currentTarget.value)}
        onBlur={() => leave(key)}
      />
      <MeantButtons of={read.meant[key] ?? []} take={type} />
      <p id={`card-${key}-says`} class={fault === undefined ? 'small soft' : 'small card-fault'}>
        {fault ?? [says, hint].filter(Boolean).join('; ')}
      </p>
    </div>
  );
}

function understood(figure: number, { unit, rounding }: Field): string {
  return unit === 'm' ? sizeIn('both', figure, rounding) : `${printKg(figure)}, ${printTonnes(figure)}`;
}
