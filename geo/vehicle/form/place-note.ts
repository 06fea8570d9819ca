import { sizeIn } from '../../units/in-units.ts';
import type { Figures } from './card-of.ts';
import type { PlaceRow } from './place-rows.ts';
import type { ReadPlace } from './read-places.ts';

/** Where the body begins and ends, metres behind the front axle. */
export interface Body {
  readonly noseM: number;
  readonly tailM: number;
}

/** The body of a card while it is written; undefined until its figures are in. */
export function bodyOf({ frontOverhangM, wheelbaseM, rearOverhangM }: Figures): Body | undefined {
  if (frontOverhangM === undefined || wheelbaseM === undefined || rearOverhangM === undefined)
    return undefined;
  return { noseM: -frontOverhangM, tailM: wheelbaseM + rearOverhangM };
}

/** How a distance was understood, where the text itself does not say it; and a place that lies outside the body. */
export function noteOf({ xM: typed }: PlaceRow, { xM }: ReadPlace, body: Body | undefined): string {
  if (xM === undefined) return '';
  const said = [];
  if (xM < 0 || !/^\s*\d+([.,]\d+)?\s*m?\s*$/.test(typed)) {
    const m = Math.abs(xM);
    const where = xM < 0 ? 'ahead of' : 'behind';
    said.push(`${sizeIn('both', m, 'nearest')} ${where} the front axle.`);
  }
  if (body && xM > body.tailM + 1e-9) said.push('That is behind the body: measure from the front axle.');
  if (body && xM < body.noseM - 1e-9) said.push('That is ahead of the body: measure from the front axle.');
  return said.join(' ');
}
