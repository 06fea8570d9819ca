import { mix } from '../../geo/earth/between.ts';
import { rowsLevel, shownFindings } from '../state/shown.ts';

/**
 * Tells what of the drive is level with a line across the rows. The line goes from their upper edge to the lower one
 * while they are scrolled from the first to the last, so that the strip beside them reaches both ends with them.
 * @param place the box that scrolls the rows
 */
export function tellLevel(place: HTMLElement): void {
  const room = place.scrollHeight - place.clientHeight;
  const share = room > 0 ? Math.min(1, Math.max(0, place.scrollTop / room)) : 0;
  const fromTopPx = share * place.clientHeight;
  const topPx = place.getBoundingClientRect().top;
  const middles = [...place.querySelectorAll<HTMLElement>('button[data-finding]')].map((row) => {
    const { top, height } = row.getBoundingClientRect();
    return top - topPx + height / 2;
  });
  rowsLevel.value = { atM: levelM(middles, fromTopPx, share), fromTopPx };
}

/** Between two rows the way between their places; above the first from the start on, below the last to the end. */
function levelM(middles: readonly number[], linePx: number, share: number): number | undefined {
  const findings = shownFindings.peek();
  const next = middles.findIndex((middle) => middle >= linePx);
  if (share === 1 || next < 0) return undefined;
  const to = findings[next]?.fromM ?? 0;
  const [fromPx, from] = next === 0 ? [0, 0] : [middles[next - 1]!, findings[next - 1]?.fromM ?? 0];
  const height = middles[next]! - fromPx;
  return height > 0 && linePx > fromPx ? mix(from, to, Math.min(1, (linePx - fromPx) / height)) : from;
}
