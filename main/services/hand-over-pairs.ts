import { given } from '../../geo/given.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import type { ValueOf } from '../contract/calls.ts';
import type { PairNews } from '../contract/hand-over/hand-over-calls.ts';
import type { Services } from '../dispatch.ts';
import type { PrintSheet } from './hand-over/finish-hand-over.ts';
import { handOverMany, type PairDone, type ToHand } from './hand-over/hand-over-many.ts';
import type { HandOverParts } from './hand-over-parts.ts';
import { shelfFolder } from './shelf/where-shelf.ts';
import { columnsOf } from './yard/columns.ts';
import { takeCheck } from './yard/grid/take-check.ts';
import { gridOfLibrary } from './yard/yard-of.ts';

type Call = Parameters<Services['handOverPairs']>;
type Ids = Call[0]['pairs'][number];

/** Hands over pairs of the library as the window asks for them, each as it is kept there. */
export async function handOverPairs(
  { engine, dataFolder, printSheet, stores, now }: HandOverParts & { readonly printSheet: PrintSheet },
  { pairs, evenBarred }: Call[0],
  { signal, onProgress }: Call[1],
): Promise<Result<ValueOf<'handOverPairs'>>> {
  const { library, settings, fleet } = stores;
  await library.refresh();
  const own = settings.current();
  const { margins, units, country, firm, before } = own;
  const columns = columnsOf(library, fleet.current());
  const drives = new Map(library.list('drive').map((drive) => [drive.id, drive]));
  const found: ToHand[] = [];
  for (const pair of pairs) {
    const drive = drives.get(pair.drive);
    const vehicle = columns.find(({ id }) => id === pair.vehicle);
    if (drive && vehicle) found.push({ drive, vehicle });
    else
      onProgress({
        kind: 'failed',
        ...pair,
        say: `The ${drive ? 'vehicle' : 'drive'} has been removed meanwhile.`,
      });
  }
  const yard = { dataFolder, folder: library.folder };
  await handOverMany(
    found,
    {
      library,
      asked: {
        shelf: shelfFolder(dataFolder),
        margins,
        units,
        yard,
        ...given({ country: country ?? undefined }),
      },
      own: { firm, before },
      evenBarred,
      signal,
      print: printSheet,
      taken: (made) =>
        takeCheck(gridOfLibrary({ library, settings: own, fleet: fleet.current(), dataFolder, now }), made),
      make: (work, pair) =>
        engine.ask('handOverFile', work, {
          signal,
          onProgress: ({ what }) => onProgress({ kind: 'doing', ...idsOf(pair), what }),
        }),
    },
    (pair, done) => onProgress(newsOf(idsOf(pair), done)),
  );
  return signal.aborted ? fail('cancelled', 'Cancelled.') : ok({});
}

function idsOf({ drive, vehicle }: ToHand): Ids {
  return { drive: drive.id, vehicle: vehicle.id };
}

function newsOf(of: Ids, done: PairDone): PairNews {
  if (done.kind === 'barred') return { ...done, ...of };
  if (done.kind === 'failed') return { ...done, ...of };
  const { made, kept, pdf, say } = done;
  const { number, facts } = made;
  // its files are had from the library, by its number
  if (!kept) return { kind: 'failed', ...of, say: say.join(' ') };
  return {
    kind: 'made',
    ...of,
    number,
    verdict: facts.verdict ?? 'unknown',
    pdf: pdf !== undefined,
    say: [...say],
    ...given({ replaces: facts.replaces }),
  };
}
