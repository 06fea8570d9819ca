import type { Verdict } from '../../report/level.ts';
import { CLEAR_SHAPE, LEVEL_SHAPES } from '../../report/level-shapes.ts';
import { type Markup, markup } from './markup.ts';

/** The mark of a level as a drawing of its own. @param size with its unit, `5mm` */
export function levelMark(verdict: Verdict, size: string): Markup {
  return markup`<svg class="mark" width="${size}" height="${size}" viewBox="0 0 24 24" aria-hidden="true">${levelShape(verdict)}</svg>`;
}

/** The shape alone, in a box of 24 by 24. */
export function levelShape(verdict: Verdict): Markup {
  if (verdict === 'clear')
    return markup`<path d="${CLEAR_SHAPE}" fill="none" stroke="currentColor" stroke-width="2.4"/>`;
  const { d, filled, dash } = LEVEL_SHAPES[verdict];
  return filled
    ? markup`<path class="level-${verdict}" d="${d}" fill="currentColor" stroke="currentColor" stroke-width="1.5"/>`
    : markup`<path class="level-${verdict}" d="${d}" fill="none" stroke="currentColor" stroke-width="3" stroke-dasharray="${dash ?? ''}"/>`;
}
