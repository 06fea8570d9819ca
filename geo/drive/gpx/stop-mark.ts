import type { RouteStop } from './route.ts';
import type { XmlElement } from './strict-xml.ts';

/**
 * The mark by which a waypoint of a file that this program wrote says that the vehicle stops there, so that roads for those
 * who go there are open to it. A waypoint without it, whatever its name, type or symbol, is no stop: it permits nothing.
 */
export const STOP_MARK = { uri: 'urn:lanegauge:drive:1', prefix: 'lanegauge', local: 'stop' } as const;

/** The mark by which such a file says of its track that the end can only be left by turning round. */
const TURN_MARK = { ...STOP_MARK, local: 'turn-at-end' } as const;

/** More stops than a drive has in earnest; each is looked for along it. */
export const MOST_STOPS = 99;

/** Whether an element is the mark. */
export function isStopMark({ local, uri }: XmlElement): boolean {
  return uri === STOP_MARK.uri && local === STOP_MARK.local;
}

/** Whether an element is the mark of a track whose end can only be left by turning round. */
export function isTurnMark({ local, uri }: XmlElement): boolean {
  return uri === TURN_MARK.uri && local === TURN_MARK.local;
}

/** The stop that a mark makes of its waypoint. */
export function markedStop(
  { lat, lon }: Pick<RouteStop, 'lat' | 'lon'>,
  { attributes }: XmlElement,
): RouteStop {
  const atM = Number(attributes['along'] ?? Number.NaN);
  return { lat, lon, ...(atM >= 0 && Number.isFinite(atM) ? { atM } : {}) };
}

/** The mark as it stands in a waypoint, its last child. */
export function writeStopMark({ atM }: Pick<RouteStop, 'atM'>): string {
  const { prefix, uri, local } = STOP_MARK;
  const along = atM === undefined ? '' : ` along="${atM.toFixed(1)}"`;
  return `<extensions><${prefix}:${local} xmlns:${prefix}="${uri}"${along}/></extensions>`;
}

/** The mark as it stands in a track, before its segments. */
export function writeTurnMark(): string {
  const { prefix, uri, local } = TURN_MARK;
  return `<extensions><${prefix}:${local} xmlns:${prefix}="${uri}"/></extensions>`;
}
