import type { Strip } from '../../drive/strip/strip.ts';
import type { PlaceToKnow } from '../document/document.ts';
import { type Markup, markup } from '../page/markup.ts';
import { COLUMN_WIDTH_MM, layColumn } from './lay-column.ts';
import { columnLabels, columnReaches } from './strip-labels.ts';
import { columnLettering } from './strip-lettering.ts';
import { columnRoad } from './strip-road.ts';

/** One column of the strip: road, what lies beside and above it, towns, distances, and the numbered findings. */
export function stripColumn(
  strip: Strip,
  places: readonly PlaceToKnow[],
  span: { readonly fromM: number; readonly toM: number },
  heightMm: number,
): Markup {
  const column = layColumn(strip, span, heightMm);
  const { fromM, toM } = span;
  const isLast = toM >= strip.lengthM;
  const own = places.filter(
    ({ finding }) => finding.fromM >= fromM && (finding.fromM < toM || (isLast && finding.fromM <= toM)),
  );
  const dots = own.map(({ finding }) => column.y(finding.fromM));
  return markup`<svg class="strip" width="${COLUMN_WIDTH_MM}mm" height="${heightMm}mm" viewBox="0 0 ${COLUMN_WIDTH_MM} ${heightMm}" aria-hidden="true">${columnRoad(column)}${columnReaches(column, own)}${columnLettering(column, dots)}${columnLabels(column, own)}</svg>`;
}
