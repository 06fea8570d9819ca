import type { Level } from '../../../geo/report/report.ts';
import { LEVEL_SHAPES } from '../../look/level-mark.tsx';

const SVG = 'http://www.w3.org/2000/svg';

/** Side of a level's mark, pixels: what bars is the loudest. */
const MARK_PX: Readonly<Record<Level, number>> = { barred: 34, tight: 26, unknown: 26, care: 26 };
/** Side of a dot's target; the dot itself is smaller. */
const DOT_TARGET_PX = 24;
const DOT_RADIUS_PX = 5;

/** The map shows less than a village from here on: farther out, what asks for care alone is a dot. */
const DOTS_BELOW_ZOOM = 14;

/** A mark as it is drawn: the level's shape on a plate, or a dot. */
export interface MarkLook {
  readonly level: Level;
  readonly as: 'plate' | 'dot';
  /** side, pixels */
  readonly size: number;
}

/** How a finding is marked at a zoom. */
export function markLook(
  level: Level,
  { zoom, chosen }: { readonly zoom: number; readonly chosen: boolean },
): MarkLook {
  if (level === 'care' && !chosen && zoom < DOTS_BELOW_ZOOM) return { level, as: 'dot', size: DOT_TARGET_PX };
  return { level, as: 'plate', size: MARK_PX[level] };
}

/** Our mark of a level on a small plate, so that it reads on any ground; or its dot. */
export function markElement({ level, as, size }: MarkLook): HTMLElement {
  const box = document.createElement('div');
  const svg =
    as === 'dot'
      ? element('svg', { viewBox: `${-size / 2} ${-size / 2} ${size} ${size}`, width: size, height: size })
      : element('svg', { viewBox: '-1 -1 26 26', width: size, height: size });
  if (as === 'dot')
    svg.append(element('circle', { r: DOT_RADIUS_PX, class: 'dot', fill: `var(--${level})` }));
  else svg.append(element('rect', { width: 24, height: 24, rx: 3, class: 'plate' }), shapeOf(level));
  box.append(svg);
  return box;
}

function shapeOf(level: Level): SVGElement {
  const { d, filled, dash } = LEVEL_SHAPES[level];
  const shape = element('path', {
    d,
    fill: filled ? `var(--${level})` : 'none',
    stroke: `var(--${level})`,
    'stroke-width': filled ? 1.5 : 3,
    transform: 'translate(2.4 2.4) scale(0.8)',
  });
  if (dash !== undefined) shape.setAttribute('stroke-dasharray', dash);
  return shape;
}

function element(
  name: 'svg' | 'rect' | 'circle' | 'path',
  attributes: Readonly<Record<string, string | number>>,
): SVGElement {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
  return made;
}
