import { printFeetInches, printKg, printMetres, printTonnes } from '../../geo/units/print.ts';
import type { Draft, ReadDraft } from '../../geo/vehicle/form/draft.ts';
import { type Field, GROUPS } from '../../geo/vehicle/form/fields.ts';
import { PlacesForm } from './places/places-form.tsx';

interface Props {
  readonly draft: Draft;
  readonly read: ReadDraft;
  change(draft: Draft): void;
}

/** Every figure of a card, each with how it was understood or what is wrong beside it. */
export function CardForm({ draft, read, change }: Props) {
  return (
    <div class="card-form">
      <div class="card-field">
        <label for="card-name">Name</label>
        <input
          id="card-name"
          value={draft.name}
          maxLength={200}
          aria-invalid={read.faults.name !== undefined}
          aria-describedby="card-name-says"
          onInput={(event) => change({ ...draft, name: event.currentTarget.value })}
        />
        <p id="card-name-says" class="small card-fault">
          {read.faults.name ?? ''}
        </p>
      </div>
      {GROUPS.map(({ title, fields }) => (
        <fieldset key={title}>
          <legend>{title}</legend>
          {fields.map((field) => (
            <Figure key={field.key} field={field} draft={draft} read={read} change={change} />
          ))}
          {title === 'Rear rack' && (
            <Tick
              label="The rack is fitted"
              on={draft.rackFitted}
              set={(rackFitted) => change({ ...draft, rackFitted })}
            />
          )}
          {title === 'Plates and masses' && (
            <>
              <Tick
                label="Running order includes the driver"
                on={draft.includesDriver}
                set={(includesDriver) => change({ ...draft, includesDriver })}
              />
              <Tick
                label="Running order includes fresh water"
                on={draft.includesFreshWater}
                set={(includesFreshWater) => change({ ...draft, includesFreshWater })}
              />
            </>
          )}
        </fieldset>
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
          maxLength={4000}
          value={draft.notes}
          onInput={(event) => change({ ...draft, notes: event.currentTarget.value })}
        />
      </div>
    </div>
  );
}

function Figure({ field, draft, read, change }: Props & { field: Field }) {
  const { key, label, unit, optional, hint } = field;
  const fault = read.faults[key];
  const figure = read.figures[key];
  const says = figure === undefined ? '' : unit === 'm' ? inBothUnits(figure, key) : inTonnes(figure);
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
      <p id={`card-${key}-says`} class={fault === undefined ? 'small soft' : 'small card-fault'}>
        {fault ?? [says, hint].filter(Boolean).join('; ')}
      </p>
    </div>
  );
}

/** What the vehicle takes up is rounded up, what it clears the ground by down: neither flatters the driver. */
function inBothUnits(m: number, key: string): string {
  const rounding = key.endsWith('ClearanceM') ? 'down' : 'up';
  return `${printMetres(m, rounding)}, ${printFeetInches(m, rounding)}`;
}

function inTonnes(kg: number): string {
  return `${printKg(kg)}, ${printTonnes(kg)}`;
}

function bodyOf({ frontOverhangM, wheelbaseM, rearOverhangM }: ReadDraft['figures']) {
  if (frontOverhangM === undefined || wheelbaseM === undefined || rearOverhangM === undefined)
    return undefined;
  return { noseM: -frontOverhangM, tailM: wheelbaseM + rearOverhangM };
}

function Tick({ label, on, set }: { label: string; on: boolean; set(on: boolean): void }) {
  return (
    <label class="card-tick">
      <input type="checkbox" checked={on} onChange={(event) => set(event.currentTarget.checked)} /> {label}
    </label>
  );
}
