import { given } from '../../given.ts';
import { Refusal } from '../refusal.ts';
import { Cursor } from './cursor.ts';
import type { Unpack } from './unpack.ts';

export interface PbfHeader {
  /** Unix seconds */
  readonly replicationTime?: number;
  /** places stand with the ways, and nodes that say nothing else may be left out */
  readonly locationsOnWays: boolean;
}

const KNOWN_FEATURES = new Set(['OsmSchema-V0.6', 'DenseNodes', 'LocationsOnWays']);

/** Reads the HeaderBlock. Throws a Refusal for a file that needs more than is known here. */
export function readPbfHeader(bytes: Uint8Array, unpack: Unpack): PbfHeader {
  const cursor = new Cursor(bytes);
  let replicationTime: number | undefined;
  let locationsOnWays = false;
  while (cursor.next()) {
    if (cursor.field === 4) {
      const feature = unpack.text(cursor.view()) ?? '';
      if (!KNOWN_FEATURES.has(feature)) throw unknownFeature(feature);
      if (feature === 'LocationsOnWays') locationsOnWays = true;
    } else if (cursor.field === 32) replicationTime = cursor.signed();
    else cursor.skip();
  }
  return { locationsOnWays, ...given({ replicationTime }) };
}

function unknownFeature(feature: string): Refusal {
  if (feature === 'HistoricalInformation')
    return new Refusal(
      'map.history',
      'it is a history file, which holds old versions of the roads beside the present ones; use an ordinary extract',
    );
  return new Refusal(
    'map.feature',
    `it needs the feature "${feature.slice(0, 60)}", which is not known here; use an ordinary extract`,
  );
}
