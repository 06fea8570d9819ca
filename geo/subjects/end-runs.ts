import type { Drive, Leg, Stretch } from '../match/drive.ts';
import type { Roads, Tags } from '../roads/roads.ts';
import { accessFor } from '../tags/access.ts';
import { isSiteRoad } from '../tags/road-class.ts';
import type { Place } from './places.ts';

/** A yard or a pitch beside the road still counts as starting on the road. Metres off the map. */
const LEAD_IN_M = 300;

/** How far the unbroken runs of some kind of road reach from the drive's start and back from its end. Metres along. */
export interface EndRuns {
  readonly startToM: number;
  readonly endFromM: number;
}

function endRuns(drive: Drive, belongs: (stretch: Stretch) => boolean): EndRuns {
  const first = reach(drive.legs, belongs);
  const last = reach([...drive.legs].reverse(), belongs);
  return { startToM: first?.toM ?? 0, endFromM: last?.fromM ?? drive.lengthM };
}

/** The last stretch of the run that begins with the first leg. */
function reach(legs: readonly Leg[], belongs: (stretch: Stretch) => boolean): Stretch | undefined {
  let last: Stretch | undefined;
  for (const [index, leg] of legs.entries()) {
    if (leg.kind === 'offMap' && index === 0 && leg.toM - leg.fromM <= LEAD_IN_M) continue;
    if (leg.kind !== 'stretch' || !belongs(leg)) break;
    last = leg;
  }
  return last;
}

/** Runs of restricted ways: within them the drive starts or ends, outside them it passes through. */
export function restrictedRuns(drive: Drive, roads: Roads): EndRuns {
  return endRuns(drive, (stretch) => isRestricted(roads.ways.tags[stretch.way] ?? {}, stretch.forward));
}

/** As restrictedRuns, site roads counted in: what a gate on the way into a site belongs to. */
export function siteRuns(drive: Drive, roads: Roads): EndRuns {
  return endRuns(drive, (stretch) => {
    const tags = roads.ways.tags[stretch.way] ?? {};
    return isSiteRoad(tags) || isRestricted(tags, stretch.forward);
  });
}

function isRestricted(tags: Tags, forward: boolean): boolean {
  const { meaning } = accessFor(tags, forward);
  return meaning !== 'open' && meaning !== 'discouraged' && meaning !== 'unknown';
}

/** Runs end where a stretch does; this is for rounding. */
const TOUCHING_M = 0.5;

export function isWithin(place: Place, runs: EndRuns): boolean {
  return place.toM <= runs.startToM + TOUCHING_M || place.fromM >= runs.endFromM - TOUCHING_M;
}
