import { parentPort } from 'node:worker_threads';
import { messageOf } from '../../files/system-error.ts';
import { type OpenShelf, openShelf } from '../../shelf/open-shelf.ts';
import { judgeDrive } from './judge-drive.ts';
import type { FromJudge, JudgeSetup, ToJudge } from './messages.ts';

const port = parentPort;
let setup: JudgeSetup | undefined;
let shelf: OpenShelf | undefined;

function tell(message: FromJudge): void {
  port?.postMessage(message);
}

async function hear(message: ToJudge): Promise<void> {
  if (message.kind === 'begin') {
    setup = message.setup;
    return;
  }
  const { task } = message;
  if (setup === undefined) return;
  try {
    shelf ??= await openShelf(setup.shelf);
    const judged = await judgeDrive(shelf, task, setup, (cell) => tell({ kind: 'cell', cell }));
    if (judged.ok) tell({ kind: 'done', drive: task.drive, box: judged.value });
    else tell({ kind: 'failed', drive: task.drive, say: judged.error.message });
  } catch (error) {
    console.error(error);
    tell({ kind: 'failed', drive: task.drive, say: `It could not be checked: ${messageOf(error)}.` });
  }
}

// one message after the other, even where a drive takes its time
let turn: Promise<void> = Promise.resolve();
port?.on('message', (message: ToJudge) => {
  turn = turn.then(() => hear(message));
});
