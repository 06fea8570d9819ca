import { driveName } from '../../../geo/library/body/drive.ts';
import type { Item } from '../../../geo/library/item.ts';
import type { Result } from '../../../geo/result.ts';
import { clip } from '../../../geo/units/text.ts';
import type { CheckRequest } from '../check-drive.ts';
import { knownOf } from '../handed/known-of.ts';
import type { Library } from '../library/library.ts';
import {
  type Finished,
  finishHandOver,
  type HandedFiles,
  type Made,
  type PrintSheet,
} from './finish-hand-over.ts';
import type { HandedFromFiles, HandOverWork } from './hand-over-from-files.ts';
import { pairOfLibrary, type VehicleTaken } from './pair-of-library.ts';

/** A drive of the library and a vehicle of the fleet. */
export interface ToHand {
  readonly drive: Item<'drive'>;
  readonly vehicle: VehicleTaken;
}

type MadeOfPair = Made & Pick<HandedFromFiles, 'route'>;

/** How each pair is handed over. */
export interface ManyOf {
  readonly library: Library;
  /** what is asked of every check: what is named here goes before what is kept with a drive */
  readonly asked: Pick<CheckRequest, 'shelf'> & Partial<CheckRequest>;
  readonly own: HandOverWork['own'];
  readonly evenBarred: boolean;
  readonly signal: AbortSignal;
  /** checks and draws, in a thread */
  make(work: HandOverWork, pair: ToHand): Promise<Result<MadeOfPair>>;
  readonly print?: PrintSheet | undefined;
  taken?(made: Made): Promise<void>;
  write?(made: MadeOfPair, files: HandedFiles, pair: ToHand): Promise<Result<unknown>>;
}

/** What became of one pair. */
export type PairDone =
  | ({ readonly kind: 'made'; readonly made: MadeOfPair } & Finished)
  | { readonly kind: 'barred' }
  | { readonly kind: 'failed'; readonly say: string };

/**
 * Hands over pairs of drive and vehicle, one after the other. One that is barred waits for a word more, one that cannot be
 * handed over is told; neither keeps the next from its turn.
 * @param hear of each pair as it is done; after the signal, of none
 */
export async function handOverMany(
  pairs: readonly ToHand[],
  of: ManyOf,
  hear: (pair: ToHand, done: PairDone) => void,
): Promise<void> {
  for (const pair of pairs) {
    if (of.signal.aborted) return;
    const done = await handOverPair(pair, of);
    if (done !== undefined) hear(pair, done);
  }
}

async function handOverPair(pair: ToHand, of: ManyOf): Promise<PairDone | undefined> {
  const { library, signal, print, taken } = of;
  const [drive, ...others] = pair.drive.versions;
  if (drive === undefined) return { kind: 'failed', say: 'It has been removed.' };
  const name =
    others.length > 0
      ? driveName(drive.body)
      : pair.vehicle.versions.length > 1
        ? pair.vehicle.card.name
        : undefined;
  if (name !== undefined)
    return {
      kind: 'failed',
      say: `${clip(name, 80)} was changed on two computers at once. Choose first which version holds.`,
    };
  const work = { ...workOfPair(pair, of), refuseBarred: !of.evenBarred };
  const made = await of.make(work, pair);
  if (signal.aborted) return undefined;
  if (!made.ok)
    return made.error.code === 'hand-over.barred'
      ? { kind: 'barred' }
      : { kind: 'failed', say: made.error.message };
  const write = of.write && ((files: HandedFiles) => of.write!(made.value, files, pair));
  const finished = await finishHandOver(made.value, {
    library,
    signal,
    print,
    ...(write && { write }),
    ...(taken && { taken }),
  });
  if (signal.aborted && !finished.ok) return undefined;
  return finished.ok
    ? { kind: 'made', made: made.value, ...finished.value }
    : { kind: 'failed', say: finished.error.message };
}

/** A pair ready to be made, in a thread. @param pair its drive has one version */
export function workOfPair(
  { drive, vehicle }: ToHand,
  { library, asked, own }: Pick<ManyOf, 'library' | 'asked' | 'own'>,
): HandOverWork {
  const body = drive.versions[0]!.body;
  const { load, ...request } = { ...pairOfLibrary(library, body, vehicle), ...asked };
  return {
    request: { ...request, ...(load && asked.loadPath === undefined && { load }) },
    known: knownOf(library, body.gpx, vehicle.id),
    own,
  };
}
