import { fail, ok, type Result } from '../../../geo/result.ts';
import { type GridCell, type GridOf, judgeGrid, type Which } from '../../services/yard/grid/grid.ts';
import type { Terminal } from '../terminal.ts';

/** A drive that could not be checked, and why. */
export interface FailedDrive {
  readonly id: string;
  readonly name: string;
  readonly say: string;
}

export interface JudgedAll {
  readonly cells: readonly GridCell[];
  readonly failed: readonly FailedDrive[];
}

/** Judges cells and shows how far it is. An empty grid needs no map. */
export async function judgeAll(of: GridOf, which: Which, terminal: Terminal): Promise<Result<JudgedAll>> {
  const { progress, signal } = terminal;
  const cells: GridCell[] = [];
  const failed: FailedDrive[] = [];
  const names = new Map(of.drives.map(({ id, name }) => [id, name]));
  const most = of.drives.length * of.vehicles.length;
  if (most === 0) return ok({ cells, failed });
  const judged = await judgeGrid(of, which, {
    signal,
    hear(news) {
      if (news.kind === 'cell') cells.push(news.cell);
      else failed.push({ id: news.drive, name: names.get(news.drive) ?? news.drive, say: news.say });
      progress.show('checking', cells.length / most);
    },
  });
  progress.clear();
  if (!judged.ok && signal.aborted) return fail('interrupted', `Stopped.`);
  return judged.ok ? ok({ cells, failed }) : judged;
}
