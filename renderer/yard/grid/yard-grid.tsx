import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
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
import { onClick, onFocusIn, placeAt } from './grid-events.ts';
import { useInSteps } from './in-steps.ts';
import { type Lay, layOf } from './lay.ts';
import { columnsInSight, type Extent, gridPlace, placeAfter, rowsInSight } from './place.ts';
import { Row } from './row.tsx';
import { useSight } from './sight.ts';
import { VehicleHeads } from './vehicle-heads.tsx';

/** A table that the keyboard goes through cell by cell, as the ARIA grid pattern has it. */
const GRID = { role: 'grid' } as const;

/**
 * The drives down, the vehicles across. Only what is in sight is drawn, so that thousands of drives scroll; the keyboard
 * goes through it as through any grid.
 */
export function YardGrid() {
  const scroller = useRef<HTMLDivElement>(null);
  const { sight, ...frames } = useSight(scroller);
  const wantsFocus = useRef(false);
  void cellsTold.value;
  const shown = rows.value;
  const across = columns.value;
  const lay = useLay(sight.widthPx, across.length);
  const { from, to } = rowsInSight({ ...sight, rowPx: lay.rowPx }, shown.length);
  const drawn = lay.narrow ? { from: 0, to: across.length } : columnsInSight(sight, lay, across.length);
  const sighted = shown.slice(from, to);
  const drawnNow = useInSteps(sighted, drawn, frames);
  const extent: Extent = {
    rows: shown.length,
    columns: across.length,
    page: Math.max(1, Math.floor(sight.heightPx / lay.rowPx) - 2),
  };
  const place = gridPlace.value;
  const [pointed, setPointed] = useState<string | undefined>(undefined);
  const [pointedRow, pointedColumn] = (pointed ?? '').split(',').map(Number);
  useLayoutEffect(() => {
    const box = scroller.current;
    if (!box || !wantsFocus.current) return;
    scrollTo(box, place.row * lay.rowPx, lay.rowPx);
    if (!lay.narrow && place.column > 0) scrollAcross(box, place.column, lay);
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
          style={{
            '--row': `${lay.rowPx}px`,
            '--head': `${lay.headPx}px`,
            '--cell': `${lay.cellPx}px`,
            minWidth: `${lay.headPx + across.length * lay.cellPx}px`,
          }}
          aria-label={`${counted(shown.length, 'drive')} and ${counted(across.length, 'vehicle')}`}
          aria-rowcount={shown.length + 1}
          aria-colcount={across.length + 1}
          onPointerOver={({ target }) => {
            const at = placeAt(target);
            setPointed(at && `${at.row},${at.column}`);
          }}
          onPointerLeave={() => setPointed(undefined)}
          onFocusIn={onFocusIn}
          onClick={onClick}
          onKeyDown={(event) => {
            const next = placeAfter(event, within, extent);
            if (!next) return;
            event.preventDefault();
            wantsFocus.current = true;
            gridPlace.value = next;
          }}
        >
          <thead>
            <VehicleHeads
              vehicles={across}
              place={within}
              from={drawn.from}
              to={drawn.to}
              cellPx={lay.cellPx}
            />
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
                    lay={lay}
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

/** The same lay as long as nothing of it is another: a row that has it is not drawn anew. */
function useLay(widthPx: number, vehicles: number): Lay {
  const windowPx = window.innerWidth;
  return useMemo(() => layOf(widthPx, windowPx, vehicles), [widthPx, windowPx, vehicles]);
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

/** Brings a column into sight beside the drives' own, no further than it must. */
function scrollAcross(box: HTMLElement, column: number, { headPx, cellPx }: Lay): void {
  const leftPx = (column - 1) * cellPx;
  const roomPx = box.clientWidth - headPx;
  if (leftPx < box.scrollLeft) box.scrollLeft = leftPx;
  else if (leftPx + cellPx > box.scrollLeft + roomPx) box.scrollLeft = leftPx + cellPx - roomPx;
}

/** Brings a row into sight below the heads, no further than it must. */
function scrollTo(box: HTMLElement, topPx: number, rowPx: number): void {
  const headPx = box.querySelector<HTMLElement>('.yard-heads')?.offsetHeight ?? 0;
  if (topPx < box.scrollTop) box.scrollTop = Math.max(0, topPx);
  else if (topPx + rowPx + headPx > box.scrollTop + box.clientHeight)
    box.scrollTop = topPx + rowPx + headPx - box.clientHeight;
}
