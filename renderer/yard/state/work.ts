import { given } from '../../../geo/given.ts';
import { counted } from '../../../geo/units/text.ts';
import type { RequestOf, ValueOf } from '../../../main/contract/calls.ts';
import type { Reply } from '../../../main/contract/reply.ts';
import type { YardCell } from '../../../main/contract/yard/yard.ts';
import { ask } from '../../host/ask.ts';
import {
  cellsOf,
  columns,
  drives,
  forgetCells,
  keepCells,
  keepFailed,
  standing,
  yard,
  yardSays,
  yardWork,
} from './yard.ts';

/** Looks again at what lies in the library, and at the cells that are kept. */
export async function lookAtYard(): Promise<void> {
  if (!takeYard(await ask('yard', {}))) return;
  await lookAtCells();
}

/** The cells that are kept, as they would be judged now: another leave time makes other cells. */
async function lookAtCells(): Promise<void> {
  // while they are judged they come by themselves
  if (yardWork.peek()) return;
  let first = true;
  const take = (told: readonly YardCell[]) => {
    if (first) forgetCells();
    first = false;
    keepCells(told);
  };
  const reply = await ask('yardCells', {}, { onProgress: ({ cells }) => take(cells) });
  if (reply.ok) take([]);
  else tell(reply.error.message, true);
}

/** @returns whether there is one */
function takeYard(reply: Reply<ValueOf<'yard'>>): boolean {
  if (reply.ok) {
    yard.value = reply.value;
    if (reply.value.notices.length > 0) tell(reply.value.notices.join(' '), true);
  } else if (yard.peek() === undefined) yard.value = { problem: reply.error.message };
  else tell(reply.error.message, true);
  return reply.ok;
}

export function tell(say: string, problem = false): void {
  yardSays.value = say === '' ? undefined : { say, problem };
}

/** Shows work with the way to stop it. @param total pieces */
export function begin(what: string, total: number) {
  const stop = new AbortController();
  const show = (done: number) => {
    yardWork.value = {
      what,
      stop: () => stop.abort(),
      ...given({ share: total === 0 ? undefined : Math.min(1, done / total) }),
    };
  };
  show(0);
  return { signal: stop.signal, show };
}

/** Judges cells: those that never were, or the old ones too. One judging at a time. */
export async function judge(which: RequestOf<'judgeYard'>['which']): Promise<void> {
  if (yardWork.peek()) return;
  const { missing, stale } = standing.peek();
  const total = which === 'missing' ? missing : missing + stale;
  if (total === 0) return;
  tell('');
  const job = begin(`Checking ${counted(total, 'pair')} of drive and vehicle`, total);
  let [done, otherwise, lost] = [0, 0, 0];
  const judged = new Set<string>();
  const reply = await ask(
    'judgeYard',
    { which },
    {
      signal: job.signal,
      onProgress(news) {
        if (news.kind === 'failed') {
          lost++;
          keepFailed(news.drive, news.say);
          return;
        }
        done += news.cells.length;
        otherwise += news.cells.filter(({ changes }) => changes.length > 0).length;
        for (const { drive, vehicle } of news.cells) judged.add(drive).add(vehicle);
        keepCells(news.cells);
        job.show(done);
      },
    },
  );
  yardWork.value = undefined;
  if (!reply.ok && reply.error.code !== 'cancelled') return tell(reply.error.message, true);
  const stopped = reply.ok ? '' : 'Stopped. What was checked is kept. ';
  const here = new Set([...drives.peek(), ...columns.peek()].map(({ id }) => id));
  const gone = [...judged].some((id) => !here.has(id))
    ? ' Something was removed meanwhile: what was checked of it is not shown.'
    : '';
  tell(`${stopped}${sayJudged(done, otherwise, lost)}${gone}`, lost > 0);
}

function sayJudged(done: number, otherwise: number, lost: number): string {
  const parts = [`${counted(done, 'pair')} checked`];
  if (otherwise > 0) parts.push(`${otherwise} otherwise than before: see What changed`);
  if (lost > 0) parts.push(`${counted(lost, 'drive')} could not be checked: its row says why`);
  return `${parts.join('; ')}.`;
}

/** Asks for a change of the library and shows what is there then. @returns whether it was made */
export async function change<K extends 'changeDrive' | 'removeDrive' | 'restoreItem' | 'chooseVersion'>(
  call: K,
  request: RequestOf<K>,
): Promise<boolean> {
  const reply: Reply<ValueOf<'yard'>> = await ask(call, request);
  if (!reply.ok) {
    tell(reply.error.message, true);
    return false;
  }
  yard.value = reply.value;
  void lookAtCells();
  return true;
}

/** A person has seen what is otherwise of these drives. */
export async function accept(ids: readonly string[], by: string): Promise<void> {
  const pairs = ids.flatMap((drive) =>
    [...cellsOf(drive).values()]
      .filter(({ changes }) => changes.length > 0)
      .map(({ vehicle }) => ({ drive, vehicle })),
  );
  const reply = await ask('acceptChanges', { pairs, by, on: today() });
  if (!reply.ok) return tell(reply.error.message, true);
  keepCells(
    pairs.flatMap(({ drive, vehicle }) => {
      const cell = cellsOf(drive).get(vehicle);
      return cell ? [{ ...cell, changes: [] }] : [];
    }),
  );
  tell(`Kept as seen by ${by}, ${today()}, on every computer that shares this library.`);
}

/** The day on this computer's clock. */
function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
