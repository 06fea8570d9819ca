import { dayInWords } from '../../../geo/clock/print-dates.ts';
import { clip } from '../../../geo/units/text.ts';
import type { YardCell, YardDrive, YardVehicle } from '../../../main/contract/yard/yard.ts';
import { settings } from '../../state/kept.ts';
import { isMarked, marking } from '../several/marked.ts';
import { apartIds, arrangement, aside, lengthOf, sayLength } from '../state/yard.ts';
import { cellOf } from './cell.tsx';
import type { Lay } from './lay.ts';
import { Ribbon } from './ribbon.tsx';

/**
 * A drive: its name, its strip laid flat, and a cell a vehicle. Drawn again only where something of it is another: a
 * scroll draws the rows that come into sight.
 */
export function Row({
  drive,
  row,
  vehicles,
  known,
  failed,
  fromColumn,
  toColumn,
  placeColumn,
  pointedColumn,
  longestM,
  lay: { narrow, cellPx },
}: {
  drive: YardDrive;
  row: number;
  vehicles: readonly YardVehicle[];
  known: ReadonlyMap<string, YardCell>;
  failed: string | undefined;
  /** which vehicles are drawn */
  fromColumn: number;
  toColumn: number;
  /** the column that Tab goes to, where it is one of this row */
  placeColumn: number | undefined;
  /** the column that is pointed at, likewise */
  pointedColumn: number | undefined;
  longestM: number;
  lay: Lay;
}) {
  const open = aside.value?.kind === 'drive' && aside.value.id === drive.id;
  const { units } = settings.value;
  const lengthM = lengthOf(drive);
  const changed = [...known.values()].some(({ changes }) => changes.length > 0);
  const asked = arrangement.value.vehicle;
  const choosing = marking.value;
  return (
    <tr
      aria-rowindex={row + 2}
      class={open ? 'yard-row yard-row-open' : 'yard-row'}
      style={{ top: `calc(var(--row) * ${row})` }}
    >
      <th scope="row" aria-colindex={1} class="yard-drive">
        <button
          type="button"
          data-place={`${row},0`}
          tabIndex={placeColumn === 0 ? 0 : -1}
          aria-expanded={open}
        >
          <span class="yard-name">
            <bdi>{clip(drive.name, 100)}</bdi>
            {drive.day && (
              <span class="soft small">
                day {drive.day.number} of {drive.day.of}
              </span>
            )}
            {drive.alike !== undefined && <span class="soft small">{drive.alike}</span>}
          </span>
          <span class="yard-under">
            <Ribbon
              lengthM={lengthM}
              cells={asked ? only(known.get(asked)) : [...known.values()]}
              longestM={longestM}
            />
            {drive.leaveAt !== undefined && (
              <span class="small yard-leaves">
                <span class="unseen">; leaves </span>
                {dayInWords(drive.leaveAt.slice(0, 10))}, {drive.leaveAt.slice(11)}
              </span>
            )}
            <span class="small yard-length">{sayLength(drive, units === 'both' ? 'metric' : units)}</span>
          </span>
          {apartIds.value.has(drive.id) && <span class="yard-flag small">two versions: choose one</span>}
          {changed && <span class="unseen">; something changed</span>}
        </button>
      </th>
      {vehicles.slice(fromColumn, toColumn).map((vehicle, i) =>
        cellOf(drive, vehicle, known.get(vehicle.id), failed, {
          row,
          column: fromColumn + i + 1,
          narrow,
          awayPx: i === 0 ? fromColumn * cellPx : 0,
          isPlace: placeColumn === fromColumn + i + 1,
          isPointed: pointedColumn === fromColumn + i + 1,
          isAsked: asked === vehicle.id,
          chosen: choosing ? isMarked(drive.id, vehicle.id) : undefined,
        }),
      )}
    </tr>
  );
}

function only<T>(value: T | undefined): readonly T[] {
  return value === undefined ? [] : [value];
}
