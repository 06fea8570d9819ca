import { clip } from '../../../geo/units/text.ts';
import { sayCell, sayNoCell, spareFigure } from '../../../geo/yard/say-cell.ts';
import type { YardCell, YardDrive, YardVehicle } from '../../../main/contract/yard/yard.ts';
import { VerdictMark } from '../../look/level-mark.tsx';
import { settings } from '../../state/kept.ts';
import { HandOverCell } from '../several/hand-over-cell.tsx';
import { isMarked, mark, marking } from '../several/marked.ts';
import { openCell } from '../state/open-cell.ts';
import { arrangement } from '../state/yard.ts';
import { gridPlace } from './place.ts';

/** Nothing points at what is touched: there every cell shows its button. */
const TOUCHED = matchMedia('(hover: none)').matches;

/** A drive with a vehicle: the verdict's mark with how many places it counts, and the figure that decides. */
export function CellOf({
  drive,
  vehicle,
  known,
  failed,
  row,
  column,
  isPlace,
  isPointed,
}: {
  drive: YardDrive;
  vehicle: YardVehicle;
  known: YardCell | undefined;
  failed: string | undefined;
  row: number;
  column: number;
  isPlace: boolean;
  isPointed: boolean;
}) {
  const { units } = settings.value;
  const says = known ? sayCell(known, units) : sayNoCell(failed);
  const figure = known ? spareFigure(known.cell, units) : '';
  const asked = arrangement.value.vehicle === vehicle.id;
  const choosing = marking.value;
  const chosen = choosing && isMarked(drive.id, vehicle.id);
  const onFocus = () => {
    gridPlace.value = { row, column };
  };
  return (
    <td
      aria-colindex={column + 1}
      class={asked ? 'yard-cell yard-asked' : 'yard-cell'}
      style={{ '--column': column + 1 }}
    >
      <button
        type="button"
        {...(choosing && { 'aria-pressed': chosen })}
        data-place={`${row},${column}`}
        tabIndex={isPlace ? 0 : -1}
        class={chosen ? `${classOf(known)} yard-chosen` : classOf(known)}
        title={`${clip(vehicle.name, 60)}: ${says}`}
        onFocus={onFocus}
        onClick={() => {
          if (choosing) mark([drive], [vehicle]);
          else void openCell(drive, vehicle.id);
        }}
      >
        <span class="unseen">{`${clip(vehicle.name, 60)}: ${says}`}</span>
        <span class="yard-mark" aria-hidden="true">
          {known ? <Mark known={known} /> : <span class="soft">{failed === undefined ? '·' : '×'}</span>}
          {known && known.changes.length > 0 && <span class="yard-changed" />}
        </span>
        {figure !== '' && (
          <span class="yard-figure" aria-hidden="true">
            {figure}
          </span>
        )}
        <span class="yard-chip-name" aria-hidden="true">
          <bdi>{clip(vehicle.name, 40)}</bdi>
        </span>
      </button>
      {(isPlace || isPointed || TOUCHED) && (
        <HandOverCell drive={drive} vehicle={vehicle} isPlace={isPlace} onFocus={onFocus} />
      )}
    </td>
  );
}

function Mark({ known: { cell } }: { known: YardCell }) {
  const count = cell.verdict === 'clear' ? 0 : cell.counts[cell.verdict];
  return (
    <>
      <VerdictMark verdict={cell.verdict} size={18} />
      {count > 1 && <span class="yard-places">{count}</span>}
    </>
  );
}

function classOf(known: YardCell | undefined): string {
  if (!known) return 'yard-open yard-unchecked';
  const old = known.stale.length > 0 ? ' yard-old' : '';
  return `yard-open yard-${known.cell.verdict}${old}`;
}
