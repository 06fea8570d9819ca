import { labelText } from '../../basemap/label-text.ts';
import { given } from '../../given.ts';
import type { Roads } from '../../roads/roads.ts';
import { findAbove } from '../above/find-above.ts';
import type { Drive } from '../drive.ts';
import { joinSpans } from '../join-spans.ts';
import { nodesOnDrive } from '../nodes-along.ts';
import { traceDrive } from '../times/trace.ts';
import { besideTheRoad } from './beside-the-road.ts';
import { leanOf } from './lean-of.ts';
import { piecesOf } from './pieces-of.ts';
import { sideRoads } from './side-roads.ts';
import type { Strip } from './strip.ts';
import { townsAlong } from './towns-along.ts';

const RAIL = /^(railway|rail)/;

/** Unrolls a drive into a strip. Pure; time grows with the drive. */
export function stripOf(drive: Drive, roads: Roads, country?: string): Strip {
  const trace = traceDrive(drive, roads);
  const passed = nodesOnDrive(drive, roads);
  return {
    lengthM: drive.lengthM,
    pieces: piecesOf(drive, roads, country),
    ...leanOf(trace, drive.lengthM),
    stubs: sideRoads(passed, trace, roads),
    beside: besideTheRoad(trace, drive.lengthM, roads),
    towns: townsAlong(trace, roads),
    guessed: joinSpans(drive.guessed, 1),
    crossings: passed
      .filter(({ node }) => roads.nodes.tags.get(node)?.['railway'] === 'level_crossing')
      .map(({ atM }) => atM),
    above: findAbove(drive, roads).map(({ atM, kind, drivenWay }) => {
      const height = labelText(roads.ways.tags[drivenWay]?.['maxheight']);
      return { atM, rail: RAIL.test(kind), ...given({ height }) };
    }),
  };
}
