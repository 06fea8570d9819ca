import { openShelf } from '../../../main/services/shelf/open-shelf.ts';
import { judgeDrive } from '../../../main/services/yard/grid/judge-drive.ts';
import type { judgeInThreads } from '../../../main/services/yard/grid/judge-in-threads.ts';

/** Judges a grid in this thread: to start others costs more than a small grid. */
export const judgeHere: typeof judgeInThreads = async (tasks, setup, { hear, signal }) => {
  const shelf = await openShelf(setup.shelf);
  for (const task of tasks) {
    if (signal.aborted) break;
    const judged = await judgeDrive(shelf, task, setup, (cell) => hear({ kind: 'cell', cell }));
    if (judged.ok) hear({ kind: 'done', drive: task.drive, box: judged.value });
    else hear({ kind: 'failed', drive: task.drive, say: judged.error.message });
  }
  shelf.close();
};
