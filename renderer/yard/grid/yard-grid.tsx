import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { counted } from '../../../geo/units/text.ts';
import { forgetNear } from '../state/near.ts';
import {
  arrangement,
  cellsOf,
  cellsTold,
  columns,
  drives,
  longestM,
  rows,
  whyFailed,
} from '../state/yard.ts';
import { useInSteps } from './in-steps.ts';
import { COLUMN_PX, columnsInSight, type Extent, gridPlace, placeAfter, rowsInSight } from './place.ts';
import { Row } from './row.tsx';
import { layOf } from './row-height.ts';
import { VehicleHeads } from './vehicle-heads.tsx';

/** A table that the keyboard goes through cell by cell, as the ARIA grid pattern has it. */
const GRID = { role: 'grid' } as const;

/**
 * The drives down, the vehicles across. Only what is in sight is drawn, so that thousands of drives scroll; the keyboard
 * goes through it as through any grid.
 */
export function YardGrid() {
  const scroller = useRef<HTMLDivElement>(null);
  const [sight, setSight] = useState<Sight>({
    topPx: 0,
    leftPx: 0,
    heightPx: 800,
    widthPx: 1000,
    headPx: 320,
  });
  const wantsFocus = useRef(false);
  void cellsTold.value;
  const shown = rows.value;
  const across = columns.value;
  const lay = layOf(sight.widthPx, across.length);
  const { from, to } = rowsInSight({ ...sight, rowPx: lay.rowPx }, shown.length);
  const drawn = lay.narrow ? { from: 0, to: across.length } : columnsInSight(sight, across.length);
  const sighted = shown.slice(from, to);
  const drawnNow = useInSteps(sighted, drawn);
  const extent: Extent = {
    rows: shown.length,
    columns: across.length,
    page: Math.max(1, Math.floor(sight.heightPx / lay.rowPx) - 2),
  };
  useEffect(() => {
    const box = scroller.current;
    if (!box) return;
    const look = () => setSight((before) => sightOf(box, before));
    look();
    const watch = new ResizeObserver(look);
    watch.observe(box);
    box.addEventListener('scroll', look, { passive: true });
    return () => {
      watch.disconnect();
      box.removeEventListener('scroll', look);
    };
  }, []);
  const place = gridPlace.value;
  const [pointed, setPointed] = useState('');
  const [pointedRow, pointedColumn] = pointed.split(',').map(Number);
  useLayoutEffect(() => {
    const box = scroller.current;
    if (!box || !wantsFocus.current) return;
    scrollTo(box, place.row * lay.rowPx, lay.rowPx);
    if (!lay.narrow && place.column > 0) scrollAcross(box, place.column);
    const found = box.querySelector<HTMLElement>(`[data-place="${place.row},${place.column}"]`);
    if (!found) return;
    wantsFocus.current = false;
    found.focus();
  });
  const within = {
    row: Math.min(place.row, shown.length - 1),
    column: Math.min(place.column, across.length),
  };
  return (
    <div class="yard-grid-place">
      <div ref={scroller} class={lay.narrow ? 'yard-scroll yard-narrow' : 'yard-scroll'}>
        <table
          {...GRID}
          class="yard-grid"
          style={{ '--columns': across.length, '--row': `${lay.rowPx}px` }}
          aria-label={`${counted(shown.length, 'drive')} and ${counted(across.length, 'vehicle')}`}
          aria-rowcount={shown.length + 1}
          aria-colcount={across.length + 1}
          onPointerOver={({ target }) => setPointed(placeOf(target))}
          onPointerLeave={() => setPointed('')}
          onKeyDown={(event) => {
            const next = placeAfter(event, within, extent);
            if (!next) return;
            event.preventDefault();
            wantsFocus.current = true;
            gridPlace.value = next;
          }}
        >
          <thead>
            <VehicleHeads vehicles={across} place={within} from={drawn.from} to={drawn.to} />
          </thead>
          <tbody class="yard-rows" style={{ height: `${shown.length * lay.rowPx}px` }}>
            {sighted.map((drive, i) => {
              const columnsNow = drawnNow.get(drive.id);
              return (
                columnsNow && (
                  <Row
                    key={drive.id}
                    drive={drive}
                    row={from + i}
                    vehicles={across}
                    known={cellsOf(drive.id)}
                    failed={whyFailed(drive.id)}
                    fromColumn={columnsNow.from}
                    toColumn={columnsNow.to}
                    placeColumn={within.row === from + i ? within.column : undefined}
                    pointedColumn={pointedRow === from + i ? pointedColumn : undefined}
                    longestM={longestM.value}
                  />
                )
              );
            })}
          </tbody>
        </table>
      </div>
      {shown.length === 0 && <NoneShown />}
    </div>
  );
}

/** The place of the cell that something of it lies in; '' for none. */
function placeOf(target: EventTarget | null): string {
  const cell = target instanceof Element ? target.closest('td') : null;
  return cell?.querySelector<HTMLElement>('[data-place]')?.dataset['place'] ?? '';
}

function NoneShown() {
  return (
    <p class="yard-none">
      None of the {counted(drives.value.length, 'drive')} is like that.{' '}
      <button
        type="button"
        class="quiet"
        onClick={() => {
          forgetNear();
          arrangement.value = { text: '', takes: 'any', order: arrangement.peek().order };
        }}
      >
        Show all
      </button>
    </p>
  );
}

/** What of the grid is in sight, in steps: within one nothing is drawn anew. */
interface Sight {
  readonly topPx: number;
  readonly leftPx: number;
  readonly heightPx: number;
  readonly widthPx: number;
  /** the drives' own column */
  readonly headPx: number;
}
const STEP_PX = 150;

function sightOf(box: HTMLElement, before: Sight): Sight {
  const now = {
    topPx: Math.floor(box.scrollTop / STEP_PX) * STEP_PX,
    leftPx: Math.floor(box.scrollLeft / COLUMN_PX) * COLUMN_PX,
    heightPx: box.clientHeight,
    widthPx: box.clientWidth,
    headPx: box.querySelector<HTMLElement>('.yard-corner')?.offsetWidth ?? before.headPx,
  };
  const isSame = (Object.keys(now) as (keyof Sight)[]).every((each) => now[each] === before[each]);
  return isSame ? before : now;
}

/** Brings a column into sight beside the drives' own, no further than it must. */
function scrollAcross(box: HTMLElement, column: number): void {
  const headPx = box.querySelector<HTMLElement>('.yard-corner')?.offsetWidth ?? 0;
  const leftPx = (column - 1) * COLUMN_PX;
  const roomPx = box.clientWidth - headPx;
  if (leftPx < box.scrollLeft) box.scrollLeft = leftPx;
  else if (leftPx + COLUMN_PX > box.scrollLeft + roomPx) box.scrollLeft = leftPx + COLUMN_PX - roomPx;
}

/** Brings a row into sight below the heads, no further than it must. */
function scrollTo(box: HTMLElement, topPx: number, rowPx: number): void {
  const headPx = box.querySelector<HTMLElement>('.yard-heads')?.offsetHeight ?? 0;
  if (topPx < box.scrollTop) box.scrollTop = Math.max(0, topPx);
  else if (topPx + rowPx + headPx > box.scrollTop + box.clientHeight)
    box.scrollTop = topPx + rowPx + headPx - box.clientHeight;
}
