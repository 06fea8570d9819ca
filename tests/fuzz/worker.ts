import { parentPort, workerData } from 'node:worker_threads';
import { mixed, randomFrom } from './make/random.ts';
import { TARGETS } from './targets/index.ts';

/** What the thread is told when it starts. */
export interface WorkerData {
  readonly seed: number;
  /** the first try's number */
  readonly from: number;
  /** [0] the number of the try under way, -1 between tries; the watcher reads it while this thread is busy */
  readonly underWay: Int32Array;
  /** tries one kept input and ends */
  readonly again?: { readonly target: string; readonly input: Uint8Array };
}

export type FromWorker =
  | { readonly kind: 'tried'; readonly counts: Readonly<Record<string, number>>; readonly next: number }
  | { readonly kind: 'fault'; readonly fault: Fault };

/** An input that was not taken as promised, and how to make it again. */
export interface Fault {
  readonly target: string;
  readonly seed: number;
  readonly number: number;
  readonly what: string;
  /** base64 */
  readonly input: string;
}

const TELL_EVERY_MS = 250;
/** Each target as often in the list as its weight says. */
const TURNS = TARGETS.flatMap((target) => Array<(typeof TARGETS)[number]>(target.weight).fill(target));

/** Which target a try is for, and its input: told by seed and number alone. */
export function tryOf(seed: number, number: number) {
  const random = randomFrom(mixed(seed, number));
  const target = random.pick(TURNS);
  return { target, make: () => target.make(random) };
}

async function tryOn(seed: number, from: number, underWay: Int32Array): Promise<void> {
  let counts: Record<string, number> = {};
  let told = performance.now();
  for (let number = from; ; number++) {
    const { target, make } = tryOf(seed, number);
    const input = make();
    Atomics.store(underWay, 0, number);
    const what = await faultOf(target, input);
    Atomics.store(underWay, 0, -1);
    counts[target.name] = (counts[target.name] ?? 0) + 1;
    if (what !== undefined)
      tell({ kind: 'fault', fault: { target: target.name, seed, number, what, input: base64(input) } });
    if (performance.now() - told < TELL_EVERY_MS) continue;
    tell({ kind: 'tried', counts, next: number + 1 });
    counts = {};
    told = performance.now();
    // lets messages out, and the end in
    await new Promise((resolve) => setImmediate(resolve));
  }
}

async function tryAgain({ target: name, input }: NonNullable<WorkerData['again']>): Promise<void> {
  const target = TARGETS.find((each) => each.name === name);
  const what = target ? await faultOf(target, input) : `there is no target ${name}`;
  if (what !== undefined)
    tell({ kind: 'fault', fault: { target: name, seed: 0, number: 0, what, input: base64(input) } });
  tell({ kind: 'tried', counts: { [name]: 1 }, next: 0 });
}

async function faultOf(target: (typeof TARGETS)[number], input: Uint8Array): Promise<string | undefined> {
  try {
    return await target.check(input);
  } catch (thrown) {
    return `throws ${thrown instanceof Error ? (thrown.stack ?? thrown.message).split('\n').slice(0, 5).join('\n') : String(thrown)}`;
  }
}

function base64(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString('base64');
}

function tell(message: FromWorker): void {
  parentPort?.postMessage(message);
}

if (parentPort) {
  const { seed, from, underWay, again } = workerData as WorkerData;
  if (again) await tryAgain(again);
  else await tryOn(seed, from, underWay);
}
