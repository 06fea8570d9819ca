import { join } from 'node:path';
import { given } from '../../../geo/given.ts';
import { folderName } from '../../../geo/handover/folder-name.ts';
import { driveName } from '../../../geo/library/body/drive.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { ok } from '../../../geo/result.ts';
import { clip } from '../../../geo/units/text.ts';
import type { HandedFiles } from '../../services/hand-over/finish-hand-over.ts';
import { handOverMany, type ManyOf, type ToHand } from '../../services/hand-over/hand-over-many.ts';
import { writeHandOver } from '../../services/hand-over/write-hand-over.ts';
import { askedBy } from '../../services/yard/asked-by.ts';
import { takeCheck } from '../../services/yard/grid/take-check.ts';
import { gridOfLibrary } from '../../services/yard/yard-of.ts';
import { checkInThread } from '../check/check-thread.ts';
import { jsonText } from '../json-text.ts';
import { sayOver } from '../print-report.ts';
import { EXIT_INTERRUPTED, EXIT_UNUSABLE, type Terminal } from '../terminal.ts';
import { exitForAll, type Handed, sayHanded } from './say-handed.ts';

interface Failed {
  readonly drive: string;
  readonly vehicle: string;
  readonly say: string;
}

/** What every pair is handed over with. */
export type SeveralOf = Pick<ManyOf, 'library' | 'asked' | 'own' | 'print'> & {
  readonly outFolder: string;
  readonly json: boolean;
};

/**
 * Hands over several pairs, a folder for each. One that cannot be is told, and the others go on.
 * @returns 0 nothing barred or over a plate, 1 something is, 2 something could not be handed over, 130 interrupted
 */
export async function handOverSeveral(
  pairs: readonly ToHand[],
  { outFolder, json, ...of }: SeveralOf,
  terminal: Terminal,
): Promise<number> {
  const { progress, signal } = terminal;
  const folders = foldersOf(pairs);
  const [handed, failed]: [Handed[], Failed[]] = [[], []];
  const show = (what: string) => progress.show(what, (handed.length + failed.length) / pairs.length);
  const barred: ToHand[] = [];
  const overs = new Map<ToHand, string>();
  const handOver = (some: readonly ToHand[], { evenBarred }: Pick<ManyOf, 'evenBarred'>) =>
    handOverMany(
      some,
      {
        ...of,
        evenBarred,
        signal,
        taken: async (made) => takeCheck(gridOfLibrary(await askedBy(of.library, terminal)), made),
        make: (work, pair) => {
          show(`handing over ${folders.get(pair)}`);
          return makeInThread(work, signal, (report) => {
            const over = sayOver(report);
            if (over !== undefined) overs.set(pair, over);
          });
        },
        write: ({ route }, files: HandedFiles, pair) =>
          writeHandOver(join(outFolder, folders.get(pair) ?? ''), files, { route, signal }),
      },
      (pair, done) => {
        const ids = { drive: pair.drive.id, vehicle: pair.vehicle.id };
        if (done.kind === 'barred') {
          barred.push(pair);
          return;
        }
        if (done.kind === 'failed') {
          failed.push({ ...ids, say: `${folders.get(pair)}: ${done.say}` });
          return;
        }
        const { number, facts } = done.made;
        const { replaces, verdict = 'unknown' } = facts;
        const over = overs.get(pair);
        handed.push({
          ...ids,
          folder: folders.get(pair) ?? '',
          number,
          verdict,
          ...given({ replaces, over }),
        });
        for (const say of done.say) terminal.complain(`${folders.get(pair)}: ${say}`);
      },
    );
  await handOver(pairs, { evenBarred: false });
  if (barred.length > 0 && !signal.aborted) {
    progress.clear();
    // every pair is asked for, barred or not; whoever looks on can stop it here
    terminal.complain(sayBarred(barred.map((pair) => folders.get(pair) ?? '')));
    await handOver(barred, { evenBarred: true });
  }
  progress.clear();
  terminal.out(
    json ? jsonText({ handedOver: handed, failed }) : sayHanded(handed, outFolder, terminal.width),
  );
  for (const { say } of failed) terminal.complain(say);
  if (signal.aborted) return EXIT_INTERRUPTED;
  if (failed.length > 0) return EXIT_UNUSABLE;
  return exitForAll(handed);
}

function sayBarred(names: readonly string[]): string {
  return `Barred, do not drive: ${names.map((name) => clip(name, 200)).join('; ')}. Each is written all the same, with "Do not drive" across its head.`;
}

async function makeInThread(
  work: Parameters<ManyOf['make']>[0],
  signal: AbortSignal,
  checked: (report: DriveReport) => void,
) {
  const done = await checkInThread({ ...work, files: 'hand over' }, { onProgress: () => {}, signal });
  if (!done.ok) return done;
  const { files, handedOver, report } = done.value;
  checked(report);
  if (handedOver === undefined) throw new Error('a handing-over came without what it is made of');
  return ok({ ...handedOver, files });
}

function foldersOf(pairs: readonly ToHand[]): ReadonlyMap<ToHand, string> {
  const folders = new Map<ToHand, string>();
  for (const pair of pairs) {
    const body = pair.drive.versions[0]?.body;
    const names = [body === undefined ? pair.drive.id : driveName(body), pair.vehicle.card.name];
    folders.set(pair, folderName(names, folders.values()));
  }
  return folders;
}
