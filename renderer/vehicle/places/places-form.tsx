import './places.css';
import { PLACES_MAX } from '../../../geo/vehicle/bounds.ts';
import { type Body, noteOf } from '../../../geo/vehicle/form/place-note.ts';
import {
  EMPTY_ROW,
  KINDS,
  type KindOfPlace,
  type PlaceRow,
  type PlaceRows,
} from '../../../geo/vehicle/form/place-rows.ts';
import type { ReadPlaces } from '../../../geo/vehicle/form/read-places.ts';
import { PlaceLine } from './place-line.tsx';

interface Props {
  readonly rows: PlaceRows;
  readonly read: ReadPlaces;
  /** where the body begins and ends, metres behind the front axle, once its figures are in */
  readonly body: Body | undefined;
  change(rows: PlaceRows): void;
}

/** Seats, tanks and lockers: where people, liquids and things go. */
export function PlacesForm(props: Props) {
  return (
    <fieldset class="card-places">
      <legend>Places</legend>
      <p class="small soft">
        Where people, liquids and things go, for the load. Metres behind the front axle; −0.4 is ahead of it.
      </p>
      {KINDS.map((each) => (
        <PlaceTable key={each.kind} {...props} of={each} />
      ))}
    </fieldset>
  );
}

const HEADS: Readonly<Record<keyof PlaceRow, string>> = {
  name: 'Name',
  holds: 'what it holds',
  xM: 'Metres',
  capacityL: 'Litres',
  limitKg: 'Most, kg',
};

function Head({ columns }: Pick<KindOfPlace, 'columns'>) {
  return (
    <thead>
      <tr>
        {columns.map((fields) => (
          <th key={fields[0]} scope="col">
            {fields.map((field) => HEADS[field]).join(', ')}
          </th>
        ))}
        <td />
      </tr>
    </thead>
  );
}

function PlaceTable({ rows, read, body, change, of }: Props & { of: KindOfPlace }) {
  const { kind, title, one, columns, hint } = of;
  const list = rows[kind];
  const set = (next: readonly PlaceRow[]) => change({ ...rows, [kind]: next });
  const remove = (index: number) => {
    set(list.toSpliced(index, 1));
    focusSoon(
      list.length > 1 ? `card-${kind}-${Math.min(index, list.length - 2)}-remove` : `card-add-${kind}`,
    );
  };
  return (
    <section class={`card-place-kind card-${kind}`} aria-label={title}>
      <h3>{title}</h3>
      {list.length > 0 && (
        <table>
          <Head columns={columns} />
          <tbody>
            {list.map((row, index) => {
              const place = read.rows[kind][index] ?? { faults: {} };
              const id = `card-${kind}-${index}`;
              return (
                <PlaceLine
                  key={id}
                  id={id}
                  called={`${one} ${index + 1}`}
                  columns={columns}
                  row={row}
                  faults={place.faults}
                  note={noteOf(row, place, body)}
                  set={(next) => set(list.with(index, next))}
                  remove={() => remove(index)}
                />
              );
            })}
          </tbody>
        </table>
      )}
      <p class="card-add">
        <button
          type="button"
          id={`card-add-${kind}`}
          disabled={list.length >= PLACES_MAX}
          onClick={() => {
            const name = kind === 'seats' && list.length === 0 ? 'Driver' : '';
            set([...list, { ...EMPTY_ROW, name }]);
            focusSoon(`card-${kind}-${list.length}-name`);
          }}
        >
          Add a {one.toLowerCase()}
        </button>{' '}
        <span class="small soft">
          {list.length >= PLACES_MAX ? `${PLACES_MAX} are the most a card takes.` : hint}
        </span>
      </p>
    </section>
  );
}

/** After the change is drawn: what was pressed may be gone, and the keyboard must not lose its place. */
function focusSoon(id: string): void {
  setTimeout(() => document.getElementById(id)?.focus(), 0);
}
