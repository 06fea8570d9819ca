import { apartM } from '../../geo/earth/point.ts';
import { EMBANKMENTS, RAILWAY, STATIONS } from '../plan/railway.ts';
import { lineLength, markSpan } from './lines/line.ts';
import { drawLine } from './lines/make-line.ts';
import type { Random } from './lines/random.ts';
import type { Sheet } from './sheet.ts';

/** One line from the western coast by the market town to the harbour. */
export function layRailway(sheet: Sheet, random: Random): void {
  const line = sheet.lay(drawLine(random, 'rail', RAILWAY));
  const length = lineLength(line);
  for (const { from, to } of EMBANKMENTS) markSpan(line, from * length, to * length, { embankment: 'yes' });
  for (const { name, ...at } of STATIONS) {
    const stop = line.pts.reduce((best, p) => (apartM(p, at) < apartM(best, at) ? p : best));
    stop.tags = { ...stop.tags, railway: 'station', name };
  }
}
