import { clip } from '../../../geo/units/text.ts';
import { sayCell, sayNoCell, spareFigure } from '../../../geo/yard/say-cell.ts';
import type { YardCell, YardDrive, YardVehicle } from '../../../main/contract/yard/yard.ts';
import { VerdictMark } from '../../look/level-mark.tsx';
import { settings } from '../../state/kept.ts';
import { HandOverCell } from '../several/hand-over-cell.tsx';

/** Nothing points at what is touched: there every cell shows its button. */
const TOUCHED = matchMedia('(hover: none)').matches;

/** How a cell stands in the grid. */
interface Stands {
  readonly row: number;
  readonly column: number;
  /** a list of marks, each with its vehicle's name */
  readonly narrow: boolean;
  /** the room of the vehicles before it that are not drawn */
  readonly awayPx: number;
  /** the cell that Tab goes to */
  readonly isPlace: boolean;
  readonly isPointed: boolean;
  /** the vehicle that is asked about */
  readonly isAsked: boolean;
  /** whether it is chosen, while cells are */
  readonly chosen: boolean | undefined;
}

/**
 * A drive with a vehicle: the verdict's mark with how many places it counts, and the figure that decides. Thousands go
 * by in a scroll: it is of as few elements as it can be (figures are drawn by the
 * style sheet: its name says them in words), and listens to nothing by itself (`grid-events.ts`).
 */
export function cellOf(
  drive: YardDrive,
  vehicle: YardVehicle,
  known: YardCell | undefined,
  failed: string | undefined,
  { row, column, narrow, awayPx, isPlace, isPointed, isAsked, chosen }: Stands,
) {
  const { units } = settings.value;
  const name = clip(vehicle.name, 60);
  const says = `${name}: ${known ? sayCell(known, units) : sayNoCell(failed)}`;
  const figure = known ? spareFigure(known.cell, units) : '';
  const sign = known ? undefined : failed === undefined ? '·' : '×';
  const withHand = isPlace || isPointed || TOUCHED;
  return (
    <td
      key={vehicle.id}
      aria-colindex={column + 1}
      class={`yard-cell${isAsked ? ' yard-asked' : ''}${withHand ? ' yard-with-hand' : ''}`}
      style={awayPx > 0 ? { marginLeft: `${awayPx}px` } : undefined}
    >
      <button
        type="button"
        aria-pressed={chosen}
        aria-label={says}
        data-place={`${row},${column}`}
        tabIndex={isPlace ? 0 : -1}
        class={chosen ? `${classOf(known)} yard-chosen` : classOf(known)}
        title={isPointed ? says : undefined}
        data-shown={narrow ? figure : (sign ?? `${known ? countOf(known) : ''}\n${figure}`.trimEnd())}
      >
        {narrow ? (
          <>
            <span class="yard-mark" data-shown={sign}>
              {known && markOf(known)}
            </span>
            <bdi class="yard-chip-name">{clip(vehicle.name, 40)}</bdi>
          </>
        ) : (
          known && markOf(known)
        )}
      </button>
      {withHand && <HandOverCell drive={drive} vehicle={vehicle} isPlace={isPlace} />}
    </td>
  );
}

function markOf({ cell, changes }: YardCell) {
  return (
    <>
      <VerdictMark verdict={cell.verdict} size={18} />
      {changes.length > 0 && <i class="yard-changed" />}
    </>
  );
}

/** How many places of its kind, where there are several. */
function countOf({ cell }: YardCell): string {
  const count = cell.verdict === 'clear' ? 0 : cell.counts[cell.verdict];
  return count > 1 ? ` ${count}` : '';
}

function classOf(known: YardCell | undefined): string {
  if (!known) return 'yard-open';
  const old = known.stale.length > 0 ? ' yard-old' : '';
  return `yard-open yard-${known.cell.verdict}${old}`;
}
