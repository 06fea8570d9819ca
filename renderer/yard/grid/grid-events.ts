import { mark, marking } from '../several/marked.ts';
import { openCell } from '../state/open-cell.ts';
import { arrangement, aside, columns, rows } from '../state/yard.ts';
import { gridPlace, type Place } from './place.ts';

/** What the table listens to for all its cells: the place that something of it lies in; undefined for none. */
export function placeAt(target: EventTarget | null): Place | undefined {
  const cell = target instanceof Element ? target.closest('td, th') : null;
  const [row, column] = (cell?.querySelector<HTMLElement>('[data-place]')?.dataset['place'] ?? '')
    .split(',')
    .map(Number);
  return row === undefined || column === undefined ? undefined : { row, column };
}

/** The keyboard goes on from what has the focus. */
export function onFocusIn({ target }: FocusEvent): void {
  const place = placeAt(target);
  if (place) gridPlace.value = place;
}

/** A cell opens its drive with its vehicle, a drive its card, a vehicle what it can take; while cells are chosen, each chooses. */
export function onClick({ target }: MouseEvent): void {
  const place = placeAt(target);
  if (!place || !(target instanceof Element) || !target.closest('[data-place]')) return;
  const [drive, vehicle] = [rows.peek()[place.row], columns.peek()[place.column - 1]];
  const [across, down] = [columns.peek(), rows.peek()];
  if (marking.peek()) mark(drive ? [drive] : down, vehicle ? [vehicle] : across);
  else if (drive && vehicle) void openCell(drive, vehicle.id);
  else if (drive) showCard(drive.id);
  else if (vehicle) askAbout(vehicle.id);
}

function showCard(id: string): void {
  const open = aside.peek();
  aside.value = open?.kind === 'drive' && open.id === id ? undefined : { kind: 'drive', id };
}

function askAbout(id: string): void {
  const now = arrangement.peek();
  arrangement.value =
    now.vehicle === id
      ? { ...now, vehicle: undefined, takes: 'any' }
      : { ...now, vehicle: id, takes: 'takes' };
}
