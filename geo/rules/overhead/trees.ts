import { areasOf } from '../../drive/beside/areas.ts';
import { type DrivenSegment, drivenSegments } from '../../drive/beside/driven-line.ts';
import { endsOf, segmentsNear } from '../../drive/beside/meet-way.ts';
import { oncePerDrive } from '../../drive/once-per-drive.ts';
import { type LocalFrame, localFrame } from '../../earth/frame.ts';
import type { Point } from '../../earth/point.ts';
import { awayFrom } from '../../earth/segment.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { pick } from '../../tags/pick.ts';
import { isMinorRoad } from '../../tags/road-class.ts';
import { saysYes } from '../../tags/says-yes.ts';
import type { Units } from '../../units/in-units.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place } from '../places.ts';
import type { SubjectRule } from '../rule.ts';
import { coveredM, endOf, joinRuns, type Piece, type Run } from '../run.ts';
import { sayTrees } from './say-overhead.ts';

/** Branches begin to matter. Metres of the card's height. */
const TALL_M = 2.8;
/** A crown reaches this far from its trunk or the wood's edge. Metres from the centre line. */
const REACH_M = 8;
/** The road is looked at every so many metres. */
const STEP_M = 15;
/** Open road this short between trees does not end them. Metres. */
const GAP_M = 300;
/** A few trees in passing. Metres. */
const FEW_M = 60;

interface TreePiece extends Piece {
  readonly tags: Tags;
  /** OSM id of the wood or row; undefined where the road itself is tagged tree-lined */
  readonly wood: number | undefined;
}

/** Woods and rows of trees beside a minor road, for tall vehicles. */
export const trees: SubjectRule = (input) => {
  if (input.card.heightM < TALL_M) return [];
  return joinRuns(treePieces(input.drive, input.roads), GAP_M).map((run) => draftOf(run, input.units));
};

const treePieces = oncePerDrive((drive, roads): TreePiece[] => {
  const places = drivenWays(drive, roads);
  return drivenSegments(drive, roads).flatMap((segment) => {
    const place = places[segment.stretch];
    return place === undefined || !isMinor(place) ? [] : alongSegment(roads, place, segment);
  });
});

function isMinor({ tags }: Place): boolean {
  return (
    tags['route'] !== 'ferry' && isMinorRoad(tags) && !saysYes(tags['tunnel']) && !saysYes(tags['bridge'])
  );
}

function alongSegment(roads: Roads, place: Place, segment: DrivenSegment): TreePiece[] {
  const { fromM, toM } = segment;
  if (saysYes(place.tags['tree_lined']))
    return [{ place, fromM, toM, tags: pick(place.tags, ['tree_lined']), wood: undefined }];
  const edges = woodEdges(roads, segment);
  const steps = Math.max(1, Math.ceil((toM - fromM) / STEP_M));
  const pieces: TreePiece[] = [];
  for (let step = 0; step < steps; step++) {
    const t = (step + 0.5) / steps;
    const way = woodAt(roads, segment, edges, t);
    if (way === undefined) continue;
    const tags = mappedOn(roads, way);
    pieces.push({
      place,
      fromM: fromM + (step / steps) * (toM - fromM),
      toM: fromM + ((step + 1) / steps) * (toM - fromM),
      tags: pick(tags, ['natural', 'landuse', 'leaf_type']),
      wood: roads.ways.id[way]!,
    });
  }
  return pieces;
}

interface Edge {
  readonly way: number;
  readonly a: Point;
  readonly b: Point;
}

/** Rows of trees and edges of woods near the segment, in the flat frame about its beginning. */
function woodEdges(roads: Roads, segment: DrivenSegment): { frame: LocalFrame; edges: Edge[] } {
  const frame = localFrame(segment.lat1, segment.lon1);
  const edges = segmentsNear(roads, segment, 'around', REACH_M)
    .filter(({ way }) => isWooded(mappedOn(roads, way)))
    .map((ref) => {
      const [a, b] = endsOf(roads, ref, frame);
      return { way: ref.way, a, b };
    });
  return { frame, edges };
}

/** The wood or row that reaches the place a fraction t along the segment. */
function woodAt(
  roads: Roads,
  segment: DrivenSegment,
  { frame, edges }: { frame: LocalFrame; edges: readonly Edge[] },
  t: number,
): number | undefined {
  const end = frame.toXY(segment.lat2, segment.lon2);
  const at = { x: t * end.x, y: t * end.y };
  const beside = nearestEdge(edges, at);
  if (beside !== undefined) return beside;
  const { lat, lon } = frame.fromXY(at.x, at.y);
  return areasOf(roads)
    .at(lat, lon)
    .find((way) => isWooded(mappedOn(roads, way)));
}

/** The way of the nearest edge within reach; of several as near the first in the map, however they were found. */
function nearestEdge(edges: readonly Edge[], at: Point): number | undefined {
  let found: number | undefined;
  let least = REACH_M;
  for (const { way, a, b } of edges) {
    const awayM = awayFrom(at, a, b);
    if (awayM > least || (awayM === least && found !== undefined && found < way)) continue;
    found = way;
    least = awayM;
  }
  return found;
}

function isWooded(tags: Tags): boolean {
  return tags['natural'] === 'wood' || tags['natural'] === 'tree_row' || tags['landuse'] === 'forest';
}

/** Of all woods beside a road so many are named. */
const WOODS_NAMED = 8;

function draftOf(run: Run<TreePiece>, units: Units): Draft {
  const lengthM = coveredM(run);
  const woods = [...new Set(run.flatMap(({ wood }) => (wood === undefined ? [] : [wood])))];
  const isMain = run.every(({ place }) => place.tags['highway'] === 'tertiary');
  return {
    subject: 'trees',
    kind: 'trees',
    level: 'care',
    run,
    again: 'folded',
    others: woods.slice(0, WOODS_NAMED).map((id) => ({ type: 'way', id })),
    tags: run[0].tags,
    folded: isMain || lengthM < FEW_M,
    ...sayTrees(lengthM, endOf(run) - run[0].fromM, units),
  };
}
