import { FERRY } from '../plan/harbour.ts';
import { points } from './lines/curve.ts';
import type { Line, Vertex } from './lines/line.ts';
import { makeLine } from './lines/make-line.ts';
import type { Sheet } from './sheet.ts';

/** The ferry from the head of the pier to the nearest point of the island's road. */
export function layFerry(sheet: Sheet): void {
  const from = outermost(sheet.line(FERRY.from), { side: 'east' });
  const to = outermost(sheet.line(FERRY.to), { side: 'west' });
  for (const end of [from, to]) end.tags = { ...end.tags, amenity: 'ferry_terminal' };
  sheet.lay(makeLine('ferry', 'ferry', [from, ...points(FERRY.through), to], FERRY.tags));
}

function outermost(line: Line, { side }: { readonly side: 'east' | 'west' }): Vertex {
  const sign = side === 'east' ? 1 : -1;
  return line.pts.reduce((best, p) => (p.x * sign > best.x * sign ? p : best));
}
