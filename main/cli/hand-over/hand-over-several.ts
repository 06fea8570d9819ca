import { join } from 'node:path';
import { given } from '../../../geo/given.ts';
import { folderName } from '../../../geo/handover/folder-name.ts';
import { driveName } from '../../../geo/library/body/drive.ts';
import { LEVEL_WORD, type Verdict } from '../../../geo/report/level.ts';
import { STANDING_CAUTION } from '../../../geo/report/standing-caution.ts';
import { ok } from '../../../geo/result.ts';
import { clip, counted } from '../../../geo/units/text.ts';
import type { HandedFiles } from '../../services/hand-over/finish-hand-over.ts';
import { handOverMany, type ManyOf, type ToHand } from '../../services/hand-over/hand-over-many.ts';
import { writeHandOver } from '../../services/hand-over/write-hand-over.ts';
import { askedBy } from '../../services/yard/asked-by.ts';
import { takeCheck } from '../../services/yard/grid/take-check.ts';
import { gridOfLibrary } from '../../services/yard/yard-of.ts';
import { checkInThread } from '../check-thread.ts';
import { jsonText } from '../json-text.ts';
import { EXIT_INTERRUPTED, EXIT_UNUSABLE, type Terminal } from '../terminal.ts';
import { wrap } from '../wrap.ts';

/** A pair that was handed over, as it is told. */
interface Handed {
  readonly drive: string;
  readonly vehicle: string;
  readonly folder: string;
  readonly number: string;
  readonly replaces?: string;
  readonly verdict: Verdict;
}

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
 * @returns 0 nothing barred, 1 something barred, 2 something could not be handed over, 130 interrupted
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
          return makeInThread(work, signal);
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
        handed.push({ ...ids, folder: folders.get(pair) ?? '', number, verdict, ...given({ replaces }) });
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
  return handed.some(({ verdict }) => verdict === 'barred') ? 1 : 0;
}

function sayBarred(names: readonly string[]): string {
  return `Barred, do not drive: ${names.map((name) => clip(name, 200)).join('; ')}. Each is written all the same, with "Do not drive" across its head.`;
}

async function makeInThread(work: Parameters<ManyOf['make']>[0], signal: AbortSignal) {
  const done = await checkInThread({ ...work, files: 'hand over' }, { onProgress: () => {}, signal });
  if (!done.ok) return done;
  const { files, handedOver } = done.value;
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

function sayHanded(handed: readonly Handed[], outFolder: string, width: number): string {
  const barred = handed.filter(({ verdict }) => verdict === 'barred');
  const lines = [
    handed.length === 0
      ? 'Nothing was handed over.'
      : `${counted(handed.length, 'drive')} handed over into ${outFolder}, a folder each:`,
    ...handed.map(
      ({ folder, number, verdict, replaces }) =>
        `${number}  ${LEVEL_WORD[verdict].toUpperCase()}  ${clip(folder, 200)}${replaces === undefined ? '' : ` (takes the place of ${replaces})`}`,
    ),
    ...(barred.length === 0
      ? []
      : [`Do not drive: ${barred.length} of these ${barred.length === 1 ? 'is' : 'are'} barred.`]),
    ...(handed.length === 0 ? [] : [STANDING_CAUTION]),
  ];
  return `${lines.flatMap((line) => wrap(line, width)).join('\n')}\n`;
}
