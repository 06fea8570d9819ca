import { parentPort } from 'node:worker_threads';
import type { FromWorker, ToWorker } from './messages.ts';
import { beginStage } from './runner.ts';
import { NotSorted, Stopped } from './stopped.ts';

const port = parentPort;
let stage: ReturnType<typeof beginStage> | undefined;

async function hear(message: ToWorker): Promise<FromWorker | undefined> {
  if (message.kind === 'begin') {
    stage = beginStage(message.stage, message.setup, message.worker);
    return undefined;
  }
  if (message.kind === 'task')
    return { kind: 'done', index: message.index, done: await stage?.run(message.task) };
  const end = stage?.end();
  stage = undefined;
  return { kind: 'ended', end };
}

async function answer(message: ToWorker): Promise<void> {
  try {
    const said = await hear(message);
    if (said) port?.postMessage(said);
  } catch (thrown) {
    if (thrown instanceof Stopped) tell({ kind: 'stopped', problem: thrown.problem });
    else if (thrown instanceof NotSorted) tell({ kind: 'notSorted' });
    // whatever it is, it ends the thread, and who started it hears of it
    else
      setImmediate(() => {
        throw thrown;
      });
  }
}

function tell(message: FromWorker): void {
  port?.postMessage(message);
}

// one message after the other, even where a task takes its time
let turn: Promise<void> = Promise.resolve();
port?.on('message', (message: ToWorker) => {
  turn = turn.then(() => answer(message));
});
