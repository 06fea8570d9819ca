import { LEVEL_SHAPES } from '../../../geo/report/level-shapes.ts';
import type { Level } from '../../../geo/report/report.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** Side of a level's plate, pixels: what bars is the loudest. */
const PLATE_PX: Readonly<Record<Level, number>> = { barred: 42, tight: 28, unknown: 26, care: 22 };
const DOT_PX = 10;
/** A finger or a pointer takes hold of no less. */
const TARGET_PX = 24;

/** The map shows less than a village from here on: farther out, what asks for care alone is a dot. */
const DOTS_BELOW_ZOOM = 15;

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
  if (level === 'care' && !chosen && zoom < DOTS_BELOW_ZOOM) return { level, as: 'dot', size: DOT_PX };
  return { level, as: 'plate', size: PLATE_PX[level] };
}

/** Side of the box that a mark is taken hold of by, pixels. */
export function targetPx({ size }: MarkLook): number {
  return Math.max(TARGET_PX, size);
}

/**
 * Our mark of a level on a small plate, so that it reads on any ground; or its dot.
 * @param count how many findings it stands for: a plate tells it where there are more than one
 */
export function markElement(look: MarkLook, count: number): HTMLElement {
  const { level, as, size } = look;
  const box = document.createElement('div');
  box.className = `mark-of-${level}`;
  if (as === 'dot') {
    const side = targetPx(look);
    const svg = element('svg', {
      viewBox: `${-side / 2} ${-side / 2} ${side} ${side}`,
      width: side,
      height: side,
    });
    svg.append(element('circle', { r: size / 2, class: 'dot', fill: `var(--${level})` }));
    box.append(svg);
    return box;
  }
  const svg = element('svg', { viewBox: '-1 -1 26 26', width: size, height: size });
  svg.append(element('rect', { width: 24, height: 24, rx: 3, class: 'plate' }), shapeOf(level));
  box.append(svg);
  if (count > 1) {
    const badge = document.createElement('span');
    badge.className = 'mark-count';
    badge.textContent = String(count);
    box.append(badge);
  }
  return box;
}

function shapeOf(level: Level): SVGElement {
  const { d, filled, dash } = LEVEL_SHAPES[level];
  const shape = element('path', {
    d,
    class: 'shape',
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
