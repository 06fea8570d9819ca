import { parentPort } from 'node:worker_threads';
import type { FromThread } from '../thread.ts';
import { makePlan, type PlanDone, type PlanWork } from './plan-work.ts';

const say = (message: FromThread<PlanDone>): void => parentPort?.postMessage(message);

const work = await new Promise<PlanWork>((resolve) => parentPort?.once('message', resolve));
say({ kind: 'done', done: await makePlan(work) });
