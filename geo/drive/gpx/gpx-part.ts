import { fail, type Problem } from '../../result.ts';
import { carriesPositions, type GpxRole, hasPosition, isGpxElement, roleInside } from './gpx-names.ts';
import type { XmlElement } from './strict-xml.ts';

/** What an open element is to the reader: one of GPX's own, a text that is wanted, or nothing of interest. */
export type GpxPart = GpxRole | 'name' | 'time' | 'ele' | 'rpt' | 'plain' | 'foreign';

/** Where an element opens: what decides which part it is. */
export interface GpxPlace {
  /** open elements, outermost first */
  readonly parts: readonly GpxPart[];
  /** namespace of the root element */
  readonly rootUri: string;
  /** inside a route point, where vendors put shape points */
  readonly inRoutePoint: boolean;
  /** the track or route opened last */
  readonly route: { readonly name: string | undefined } | undefined;
}

/** @returns the part an element below the root has, or why it may not stand there */
export function partOf({ local, uri, attributes, line }: XmlElement, place: GpxPlace): GpxPart | Problem {
  const parent = place.parts.at(-1);
  if (local === 'rpt' && place.inRoutePoint) return 'rpt';
  if (parent === 'foreign' || !isGpxElement(place.rootUri, uri) || local === 'extensions') return 'foreign';
  const role = roleInside(parent, local);
  if (role) return role;
  if (carriesPositions(local) || hasPosition(attributes))
    return fail(
      'gpx.misplaced',
      `Line ${line}: "${local.slice(0, 60)}" stands where GPX has no such element; export the drive again.`,
    ).error;
  if (local === 'name' && (parent === 'trk' || parent === 'rte') && place.route?.name === undefined)
    return 'name';
  if ((local === 'time' || local === 'ele') && (parent === 'trkpt' || parent === 'rtept')) return local;
  return 'plain';
}

/** An element left aside is named as in GPX though of another namespace: the user is told of it. */
export function isLookalike({ local, uri }: XmlElement, { parts, rootUri }: GpxPlace): boolean {
  return carriesPositions(local) && parts.at(-1) !== 'foreign' && !isGpxElement(rootUri, uri);
}
