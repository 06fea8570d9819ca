import { capital } from '../../../geo/units/text.ts';
import { PLACE_NAME_LONGEST } from '../../../geo/vehicle/bounds.ts';
import type { PlaceField, PlaceRow } from '../../../geo/vehicle/form/place-rows.ts';
import type { ReadPlace } from '../../../geo/vehicle/form/read-places.ts';
import { LIQUID_FACTS, LIQUIDS } from '../../../geo/vehicle/liquids.ts';

interface Props {
  readonly id: string;
  /** as "Tank 2" */
  readonly called: string;
  readonly columns: readonly (readonly PlaceField[])[];
  readonly row: PlaceRow;
  readonly faults: ReadPlace['faults'];
  /** how the row was understood, where that needs saying */
  readonly note: string;
  set(row: PlaceRow): void;
  remove(): void;
}

/** As a screen reader names each field, after "Tank 2". */
const SPOKEN: Readonly<Record<PlaceField, string>> = {
  name: 'name',
  holds: 'holds',
  xM: 'metres behind the front axle',
  capacityL: 'litres',
  limitKg: 'most in kg, if known',
};

/** One place: its fields, and beneath them what is wrong or how it was understood. */
export function PlaceLine({ id, called, columns, row, faults, note, set, remove }: Props) {
  const wrong = columns
    .flat()
    .flatMap((field) => faults[field] ?? [])
    .join(' ');
  const says = wrong === '' ? note : wrong;
  const about = (field: PlaceField) => ({
    id: `${id}-${field}`,
    'aria-label': `${called}, ${SPOKEN[field]}`,
    'aria-invalid': faults[field] !== undefined,
    ...(says === '' ? {} : { 'aria-describedby': `${id}-says` }),
  });
  return (
    <>
      <tr>
        {columns.map((fields) => (
          <td key={fields[0]}>
            <div class="card-place-cell">
              {fields.map((field) =>
                field === 'holds' ? (
                  <Holds key={field} about={about(field)} row={row} set={set} />
                ) : (
                  <input
                    key={field}
                    {...about(field)}
                    value={row[field]}
                    autoComplete="off"
                    maxLength={field === 'name' ? PLACE_NAME_LONGEST : 40}
                    onInput={({ currentTarget }) => set({ ...row, [field]: currentTarget.value })}
                    // a load finds its place by the name: no blank at its ends that nobody sees
                    onChange={({ currentTarget }) => set({ ...row, [field]: currentTarget.value.trim() })}
                  />
                ),
              )}
            </div>
          </td>
        ))}
        <td>
          <button type="button" id={`${id}-remove`} onClick={remove}>
            Remove<span class="unseen"> {called.toLowerCase()}</span>
          </button>
        </td>
      </tr>
      {says !== '' && (
        <tr>
          <td colSpan={columns.length + 1}>
            <p id={`${id}-says`} class={wrong === '' ? 'small soft' : 'small card-fault'}>
              {called}: {says}
            </p>
          </td>
        </tr>
      )}
    </>
  );
}

function Holds({ about, row, set }: Pick<Props, 'row' | 'set'> & { about: object }) {
  return (
    <select
      {...about}
      value={row.holds}
      onChange={({ currentTarget }) => {
        const holds = LIQUIDS.find((each) => each === currentTarget.value) ?? '';
        const name = row.name.trim() === '' && holds !== '' ? tankName(holds) : row.name;
        set({ ...row, holds, name });
      }}
    >
      <option value="">choose</option>
      {LIQUIDS.map((liquid) => (
        <option key={liquid} value={liquid}>
          {LIQUID_FACTS[liquid].name}
        </option>
      ))}
    </select>
  );
}

/** What a tank without a name is called once it is known what it holds. */
function tankName(holds: keyof typeof LIQUID_FACTS): string {
  const { name } = LIQUID_FACTS[holds];
  const upper = capital(name);
  return upper.endsWith('tank') ? upper : `${upper} tank`;
}
