import { fail, ok } from '../../../geo/result.ts';
import type { FollowedDrive } from '../../../main/contract/followed-drive.ts';
import type { MapSummary } from '../../../main/contract/map-summary.ts';
import type { Engine } from '../../../main/services/engine/engine.ts';

const SUMMARY: MapSummary = {
  name: 'district.osm.pbf',
  sources: [{ name: 'district.osm.pbf', sha256: '00', dataDate: '2026-01-01' }],
  roads: 3,
  bounds: { south: 50, west: -1, north: 51, east: 0 },
  center: { lat: 50.5, lon: -0.5 },
  notes: [],
};

function driveView(driveId: string, file: string): FollowedDrive {
  return {
    driveId,
    name: 'Weir Lane',
    file,
    tracks: [{ kind: 'track', number: 1, name: 'Weir Lane', positions: 2 }],
    taken: 1,
    lengthM: 1000,
    legs: [{ kind: 'offMap', fromM: 0, toM: 1000, line: [50, -1, 50.009, -1], alongM: [0, 1000] }],
    guessed: [],
    doubtful: [],
    match: { drivenM: 0, offMapM: 1000, guessedM: 0 },
    notes: [],
  };
}

export interface FakeEngine extends Engine {
  readonly asked: { name: string; request: unknown }[];
  /** how often a waiting question was cancelled */
  cancelled: number;
}

/**
 * Stands in for the reading of maps: a map of the sample opens in three steps; a map called `slow` waits until it is
 * cancelled; one called `mistake` hits a programmer's mistake; a big one answers with two megabytes.
 */
export function fakeEngine(): FakeEngine {
  const engine: FakeEngine = {
    asked: [],
    cancelled: 0,
    warm: () => {},
    async ask(name, request, hooks) {
      engine.asked.push({ name, request });
      const file = 'file' in request ? request.file : { path: '', name: '' };
      if (file.name.startsWith('mistake')) throw new TypeError('secret /home/ann/drives');
      if (file.name.startsWith('slow')) {
        const stopped = new Promise<void>((resolve) =>
          hooks.signal.addEventListener('abort', () => resolve()),
        );
        hooks.onProgress({ what: 'Reading the map', share: 0.1 });
        await stopped;
        engine.cancelled++;
        return fail('cancelled', 'Cancelled.');
      }
      if (name === 'openMap') {
        for (const share of [0, 0.5, 1]) hooks.onProgress({ what: 'Reading the map', share });
        const notes = file.name.startsWith('big') ? ['é'.repeat(1_000_000)] : [];
        return ok({ ...SUMMARY, name: file.name, notes }) as never;
      }
      if (name === 'openDrive')
        return ok(driveView('driveId' in request ? request.driveId : '', file.name)) as never;
      return fail('no-drive', 'That drive is no longer open. Open it again.');
    },
    close: async () => {},
  };
  return engine;
}
