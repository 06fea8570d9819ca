import type { WriteStream } from 'node:tty';

/** One line on the terminal's error stream that is written over; silent where nobody watches. */
export interface Progress {
  show(what: string, share?: number): void;
  /** The same for work that keeps one waiting: a line for each change where nobody watches. */
  steps(what: string, share?: number): void;
  clear(): void;
}

const SHOW_EVERY_MS = 100;
const QUIET_FOR_MS = 400;

/** Shows nothing for work that is over at once. */
export function progressOn(stream: WriteStream | NodeJS.WritableStream, now: () => number): Progress {
  if (!('isTTY' in stream) || !stream.isTTY) return inLines(stream);
  const started = now();
  let last = 0;
  let dirty = false;
  const show = (what: string, share?: number) => {
    const time = now();
    if (time - started < QUIET_FOR_MS || time - last < SHOW_EVERY_MS) return;
    last = time;
    dirty = true;
    stream.write(`\r\u001b[K${what}${share === undefined ? '…' : ` ${Math.floor(share * 100)} %`}`);
  };
  return {
    show,
    steps: show,
    clear() {
      if (dirty) stream.write('\r\u001b[K');
      dirty = false;
    },
  };
}

function inLines(stream: NodeJS.WritableStream): Progress {
  let last = '';
  return {
    show: () => {},
    steps(what) {
      if (what !== last) stream.write(`${what}\n`);
      last = what;
    },
    clear: () => {},
  };
}
