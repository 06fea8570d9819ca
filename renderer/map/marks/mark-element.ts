import type { Level } from '../../../geo/report/report.ts';
import { LEVEL_SHAPES } from '../../look/level-mark.tsx';

const SVG = 'http://www.w3.org/2000/svg';

/** Side of a mark's target, pixels. */
export const MARK_PX = 26;

/** Our mark of a level on a small plate, so that it reads on any ground. */
export function markElement(level: Level): HTMLElement {
  const box = document.createElement('div');
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('viewBox', '-1 -1 26 26');
  svg.setAttribute('width', String(MARK_PX));
  svg.setAttribute('height', String(MARK_PX));
  const plate = document.createElementNS(SVG, 'rect');
  for (const [name, value] of [
    ['x', '0'],
    ['y', '0'],
    ['width', '24'],
    ['height', '24'],
    ['rx', '3'],
    ['class', 'plate'],
  ] as const)
    plate.setAttribute(name, value);
  const { d, filled, dash } = LEVEL_SHAPES[level];
  const shape = document.createElementNS(SVG, 'path');
  shape.setAttribute('d', d);
  shape.setAttribute('fill', filled ? `var(--${level})` : 'none');
  shape.setAttribute('stroke', `var(--${level})`);
  shape.setAttribute('stroke-width', filled ? '1.5' : '3');
  if (dash !== undefined) shape.setAttribute('stroke-dasharray', dash);
  shape.setAttribute('transform', 'translate(2.4 2.4) scale(0.8)');
  svg.append(plate, shape);
  box.append(svg);
  return box;
}
