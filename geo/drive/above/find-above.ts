import { append } from '../../lists.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads } from '../../roads/roads.ts';
import { textOf } from '../../tags/text-of.ts';
import { isInside } from '../beside/areas.ts';
import { type DrivenSegment, drivenSegments } from '../beside/driven-line.ts';
import { crossingM, segmentsNear, sharesNode } from '../beside/meet-way.ts';
import type { Drive } from '../drive.ts';
import { oncePerDrive } from '../once-per-drive.ts';
import { isBridge, layerOf, layerOrImplied, liesAbove, roofOver } from './lies-above.ts';
import { type OverKind, overKind } from './over-kind.ts';

/** Something that crosses over the driven road. */
export interface Above {
  readonly kind: OverKind;
  /** index into Roads.ways of what crosses */
  readonly way: number;
  /** index into Roads.ways of the driven road, and which of the drive's stretches it is */
  readonly drivenWay: number;
  readonly stretch: number;
  /** metres along the drive */
  readonly atM: number;
}

/** The same way met again within this distance is one crossing: at a vertex both neighbours meet it. Metres. */
const SAME_CROSSING_M = 5;
/** What is drawn as an outline is met going in and coming out. Metres. */
const SAME_OUTLINE_M = 150;
const OUTLINES: ReadonlySet<OverKind> = new Set(['structure', 'roof', 'building', 'gateway']);
/** Where a pipe or conveyor may run over a road. */
const HIGH_PIPES = new Set(['overhead', 'overground', 'bridge']);
/** The outline of the bridge driven on begins this near to where the road's own bridge does. Metres. */
const OWN_BRIDGE_M = 40;
/** The same where the road's own bridge is seen to run within the outline. Metres. */
const OWN_OUTLINE_M = 250;

/**
 * Everything that crosses over the drive, in driving order. Ways that share a node with the road there meet it and
 * lie not above; under a tunnel or a roof of the driven way nothing is looked for, since that itself is the question.
 */
export const findAbove: (drive: Drive, roads: Roads) => readonly Above[] = oncePerDrive(lookAbove);

function lookAbove(drive: Drive, roads: Roads): Above[] {
  const segments = drivenSegments(drive, roads);
  const kinds = new Map<number, OverKind | undefined>();
  const kindOf = (way: number) => {
    if (!kinds.has(way)) kinds.set(way, overKind(mappedOn(roads, way)));
    return kinds.get(way);
  };
  const found: Above[] = [];
  for (const segment of segments) {
    const ours = mappedOn(roads, segment.way);
    if (ours['route'] === 'ferry' || roofOver(ours) !== undefined) continue;
    const meets: Above[] = [];
    const refs = [...segmentsNear(roads, segment, 'driven'), ...segmentsNear(roads, segment, 'around')];
    for (const ref of refs) {
      const kind = ref.way === segment.way ? undefined : kindOf(ref.way);
      if (kind === undefined || !isOver(roads, ref.way, kind, segment.way)) continue;
      const atM = sharesNode(roads, segment, ref) ? undefined : crossingM(roads, segment, ref);
      if (atM === undefined) continue;
      meets.push({ kind, way: ref.way, drivenWay: segment.way, stretch: segment.stretch, atM });
    }
    append(
      found,
      meets.sort((a, b) => a.atM - b.atM),
    );
  }
  return withoutOwnBridge(onceEach(found), roads, segments);
}

function isOver(roads: Roads, other: number, kind: OverKind, driven: number): boolean {
  const tags = mappedOn(roads, other);
  const ours = mappedOn(roads, driven);
  if (kind === 'gateway' || kind === 'gantry') return (layerOf(tags) ?? 0) >= 0 && !isBridge(ours);
  if (kind === 'roof' || kind === 'building')
    return (
      (layerOf(tags) ?? 0) >= (layerOf(ours) ?? 0) && !isBridge(ours) && tags['location'] !== 'underground'
    );
  if (kind === 'pipe') return HIGH_PIPES.has(textOf(tags, 'location')) || liesAbove(tags, ours);
  if (kind === 'structure') return liesAbove(tags, ours) && layerOrImplied(tags) > layerOrImplied(ours);
  if (kind === 'aqueduct') return isBridge(tags) && liesAbove(tags, ours);
  return liesAbove(tags, ours);
}

function onceEach(found: readonly Above[]): Above[] {
  const last = new Map<number, number>();
  return found.filter(({ way, kind, atM }) => {
    const before = last.get(way);
    last.set(way, atM);
    return before === undefined || atM - before > (OUTLINES.has(kind) ? SAME_OUTLINE_M : SAME_CROSSING_M);
  });
}

/** The outline of the bridge the drive itself runs over crosses its approaches, not the drive. */
function withoutOwnBridge(
  found: readonly Above[],
  roads: Roads,
  segments: readonly DrivenSegment[],
): Above[] {
  if (!found.some((above) => above.kind === 'structure')) return [...found];
  const bridges = segments.filter((segment) => isBridge(mappedOn(roads, segment.way)));
  return found.filter(
    ({ kind, way, atM }) =>
      kind !== 'structure' ||
      !bridges.some((bridge) => {
        const awayM = Math.max(bridge.fromM - atM, atM - bridge.toM);
        return awayM < OWN_BRIDGE_M || (awayM < OWN_OUTLINE_M && runsWithin(roads, bridge, way));
      }),
  );
}

/** Whether the middle of a driven piece lies within an outline. */
function runsWithin(roads: Roads, { lat1, lon1, lat2, lon2 }: DrivenSegment, outline: number): boolean {
  return isInside(roads, [outline], (lat1 + lat2) / 2, (lon1 + lon2) / 2);
}
