import type { Drive } from '../../drive/drive.ts';
import { lineBetween } from '../../drive/line-between.ts';
import { pointAt } from '../../drive/point-at.ts';
import type { Strip } from '../../drive/strip/strip.ts';
import { METRES_PER_DEGREE } from '../../earth/sphere.ts';
import type { Roads } from '../../roads/roads.ts';
import { rankOf } from '../../tags/road-class.ts';
import { printKm } from '../../units/print.ts';
import { cut } from '../../units/text.ts';
import type { PlaceToKnow } from '../document/document.ts';
import { levelShape } from '../page/level-mark.ts';
import { type Markup, markup } from '../page/markup.ts';
import { clusterMarks, LABEL_HEIGHT_MM, type Label } from './cluster-marks.ts';
import { type BoxMm, type MapProjection, type OnPaper, projectionOf } from './projection.ts';
import { pathAlong, thinLine } from './thin-line.ts';

/** A followed drive on its roads, unrolled. */
export interface DrawnDrive {
  readonly drive: Drive;
  readonly roads: Roads;
  readonly strip: Strip;
}

const EDGE_MM = 9;
/** No eye tells more apart on paper. */
const THIN_MM = 0.15;
/** Places drawn of other roads, at most: the more important are drawn first. */
const MOST_BESIDE = 4000;

/** The drive on its map, north up, with its numbered findings: an SVG whose unit is the millimetre on paper. */
export function driveMap(
  { drive, roads, strip }: DrawnDrive,
  places: readonly PlaceToKnow[],
  box: BoxMm,
): Markup {
  const line = lineBetween(drive, roads, 0, drive.lengthM);
  if (line.length === 0) return markup``;
  const projection = projectionOf(line, box, EDGE_MM);
  const drawn = thinLine(
    line.map(([lon, lat]) => projection.place(lat, lon)),
    THIN_MM,
  );
  const labels = clusterMarks(
    places.map(({ number, finding: { at, level } }) => ({
      ...projection.place(at.lat, at.lon),
      number,
      level,
    })),
    drawn,
    box,
  );
  const { widthMm, heightMm } = box;
  return markup`<svg class="drive-map" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}" role="img" aria-label="Map of the drive with its numbered places"><g class="map-beside">${roadsBeside(roads, projection)}</g><path class="map-drive-edge" d="${pathAlong(drawn)}"/><path class="map-drive" d="${pathAlong(drawn)}"/>${towns({ drive, roads, strip }, projection, labels)}${ends(drawn)}${labels.toReversed().map(labelDrawn)}${scaleBar(projection)}</svg>`;
}

/** Other roads within sight, as far as there is ink for them. */
function roadsBeside(roads: Roads, { south, west, north, east, place }: MapProjection): Markup[] {
  const ways = new Set<number>();
  for (const { way } of roads.index.inBox(south, west, north, east, 'driven')) ways.add(way);
  const ranked = [...ways]
    .map((way) => ({ way, rank: rankOf(roads.ways.tags[way]?.['highway']) }))
    .filter(({ rank }) => rank <= 6)
    .sort((a, b) => a.rank - b.rank || a.way - b.way);
  const byRank = new Map<number, string[]>();
  let drawn = 0;
  let lastRank = 0;
  for (const { way, rank } of ranked) {
    // a rank that does not fit whole is left out: half of it would look like all there is
    if (rank !== lastRank && drawn > MOST_BESIDE / 2) break;
    if (drawn > MOST_BESIDE) break;
    lastRank = rank;
    const line: OnPaper[] = [];
    for (let i = roads.ways.start[way]!; i < roads.ways.start[way + 1]!; i++) {
      const node = roads.ways.refs[i]!;
      line.push(place(roads.nodes.lat[node]!, roads.nodes.lon[node]!));
    }
    const thin = thinLine(line, THIN_MM);
    drawn += thin.length;
    byRank.set(rank, [...(byRank.get(rank) ?? []), pathAlong(thin)]);
  }
  return [...byRank].map(
    ([rank, paths]) => markup`<path class="map-road-${Math.min(3, rank)}" d="${paths.join('')}"/>`,
  );
}

function towns(
  { drive, roads, strip }: DrawnDrive,
  { place, box }: MapProjection,
  labels: readonly Label[],
): Markup[] {
  const taken = labels.map(({ at, widthMm }) => ({ ...at, halfMm: widthMm / 2 }));
  const drawn: Markup[] = [];
  for (const { atM, name, size } of [...strip.towns].sort((a, b) => b.size - a.size)) {
    const at = pointAt(drive, roads, atM);
    if (at === undefined) continue;
    const text = cut(name, 24);
    const halfMm = (text.length * (size === 3 ? 2 : 1.6)) / 2;
    const { x, y } = place(at.lat, at.lon);
    const middle = {
      x: Math.min(Math.max(x, halfMm + 1), box.widthMm - halfMm - 1),
      y: y > 8 ? y - 2.2 : y + 4.5,
    };
    const clear = taken.every(
      (other) =>
        Math.abs(other.x - middle.x) > halfMm + other.halfMm ||
        Math.abs(other.y - middle.y) > LABEL_HEIGHT_MM,
    );
    if (!clear) continue;
    taken.push({ ...middle, halfMm });
    drawn.push(
      markup`<text class="map-town map-town-${size}" x="${middle.x.toFixed(1)}" y="${middle.y.toFixed(1)}">${text}</text>`,
    );
  }
  return drawn;
}

function ends(line: readonly OnPaper[]): Markup {
  const [first, last] = [line[0]!, line.at(-1)!];
  return markup`<circle class="map-start" cx="${first.x.toFixed(2)}" cy="${first.y.toFixed(2)}" r="1.5"/><rect class="map-end" x="${(last.x - 1.4).toFixed(2)}" y="${(last.y - 1.4).toFixed(2)}" width="2.8" height="2.8"/>`;
}

function labelDrawn({ x, y, at, widthMm, text, level }: Label): Markup {
  const [left, top] = [at.x - widthMm / 2, at.y - LABEL_HEIGHT_MM / 2];
  return markup`<g class="map-label"><path class="map-leader" d="M${x.toFixed(2)} ${y.toFixed(2)}L${at.x.toFixed(2)} ${at.y.toFixed(2)}"/><circle cx="${x.toFixed(2)}" cy="${y.toFixed(2)}" r="0.8"/><rect x="${left.toFixed(2)}" y="${top.toFixed(2)}" width="${widthMm.toFixed(2)}" height="${LABEL_HEIGHT_MM}" rx="0.8"/><g class="ink-${level}" transform="translate(${(left + 0.7).toFixed(2)} ${(at.y - 1.5).toFixed(2)}) scale(0.125)">${levelShape(level)}</g><text x="${(left + 4.2).toFixed(2)}" y="${(at.y + 1.15).toFixed(2)}">${text}</text></g>`;
}

const BARS_M = [50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000, 200_000];
const BAR_MOST_MM = 32;

/** A bar of a round length, and which way is north. */
function scaleBar({ box, north, south, west, east }: MapProjection): Markup {
  const acrossM = (east - west) * METRES_PER_DEGREE * Math.cos((((north + south) / 2) * Math.PI) / 180);
  const mmPerM = box.widthMm / acrossM;
  const m = BARS_M.findLast((one) => one * mmPerM <= BAR_MOST_MM) ?? BARS_M[0]!;
  const [x, y] = [3, box.heightMm - 3];
  const text = m < 1000 ? `${m} m` : printKm(m).replace('.0', '');
  return markup`<g class="map-scale"><path d="M${x} ${y - 1.2}v1.2h${(m * mmPerM).toFixed(2)}v-1.2"/><text x="${x + 1}" y="${y - 1.2}">${text}</text><path d="M${box.widthMm - 4} ${y}v-7m-1.6 2.4l1.6 -2.4l1.6 2.4"/><text x="${box.widthMm - 8.4}" y="${y - 0.2}">N</text></g>`;
}
