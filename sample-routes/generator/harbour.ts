import { type Pair, points } from './curve.ts';
import { makeLine } from './draw.ts';
import { type Line, markSpan, type Tags, type Vertex } from './line.ts';
import type { Site } from './streets.ts';

/** Lays a road through points. */
export type Lay = (key: string, through: readonly Pair[], tags: Tags, options?: Partial<Line>) => Line;

/** The check-in lanes, the pier, the ferry and the island it goes to. */
export function layHarbour(lay: Lay, spot: (x: number, y: number, tags: Tags) => void, site: Site): void {
  const quay: Tags = {
    highway: 'unclassified',
    surface: 'asphalt',
    maxspeed: '20 mph',
    oneway: 'yes',
    lit: 'yes',
  };
  lay(
    'quay-in',
    [
      [7500, 640],
      [7620, 668],
      [7800, 650],
    ],
    { ...quay, name: 'Check-in Lanes', lanes: '2' },
  );
  lay(
    'quay-out',
    [
      [7800, 650],
      [7700, 600],
      [7600, 590],
      [7500, 640],
    ],
    { ...quay, name: 'Quay Exit' },
  );
  const pier = lay(
    'pier',
    [
      [7800, 650],
      [7980, 620],
      [8330, 600],
    ],
    { ...quay, oneway: 'no', name: 'Ferry Pier', incline: '-6%' },
  );
  const canopy = site.sheet.line('quay-in');
  markSpan(canopy, 150, 185, { 'maxheight:lanes': '3.0|4.4', covered: 'yes' });
  const lane: Tags = {
    highway: 'unclassified',
    surface: 'asphalt',
    maxspeed: '30 mph',
    lanes: '1',
    width: '3.5',
  };
  const slip = lay(
    'holm',
    [
      [9690, 300],
      [9950, 350],
      [10250, 500],
      [10700, 600],
      [11100, 500],
    ],
    { ...lane, name: 'Holm Road', passing_places: 'yes' },
  );
  lay(
    'holm-loop',
    [
      [10250, 500],
      [10300, 150],
      [10500, -130],
      [10900, -130],
      [11120, 180],
      [11100, 500],
    ],
    { ...lane, name: 'Loop Road' },
  );
  lay(
    'holm-shore-road',
    [
      [10700, 600],
      [10600, 880],
      [10350, 1050],
    ],
    { ...lane, name: 'Cove Lane', surface: 'gravel' },
  );
  const from = outermost(pier, 1);
  const to = outermost(slip, -1);
  const sea: Vertex[] = [
    from,
    ...points([
      [8700, 620],
      [9300, 420],
    ]),
    to,
  ];
  for (const end of [from, to]) end.tags = { ...end.tags, amenity: 'ferry_terminal' };
  site.sheet.lay(
    makeLine('ferry', 'ferry', sea, {
      route: 'ferry',
      name: 'Marrel Ferry',
      motor_vehicle: 'yes',
      foot: 'yes',
      maxlength: '8',
      maxheight: '3.8',
      duration: '00:12',
    }),
  );
  spot(10660, 640, { place: 'hamlet', name: 'Holm Green' });
  spot(10500, 300, { place: 'island', name: 'Marrel Holm' });
}

function outermost(line: Line, side: 1 | -1): Vertex {
  return line.pts.reduce((best, p) => (p.x * side > best.x * side ? p : best));
}
