import type { Problem } from '../../../../geo/result.ts';
import { unreadable } from '../../files/read-bytes.ts';
import { codeOf, messageOf } from '../../files/system-error.ts';

/** Leaves an import from deep inside with a sentence for the user. */
export class Stopped extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.message);
    this.problem = problem;
  }
}

/** The source is not sorted by kind and id, or not in the plain manner: it is to be read the general way. */
export class NotSorted extends Error {}

/** The source could not be read on: a disk that was pulled out says so in many ways. */
export function sourceLost(path: string, error: unknown): Stopped {
  const code = codeOf(error);
  if (code === 'ENOENT' || code === 'EACCES' || code === 'EPERM')
    return new Stopped(unreadable(path, 'map file', error));
  return new Stopped({
    code: 'unreadable',
    message: `${path} could not be read to its end (${messageOf(error)}). Was its disk or stick taken out? Put it back and import it again.`,
  });
}

/** The source became shorter while it was read. */
export function sourceShrank(path: string): Stopped {
  return new Stopped({
    code: 'map.changed',
    message: `${path} became shorter while it was read. Wait until it is copied or downloaded, then import it again.`,
  });
}

/** More in one tile than a reader takes. */
export function tooDense(): Stopped {
  return new Stopped({
    code: 'too-large',
    message:
      'The map holds more in one place than the shelf can keep: it may be damaged or unusually made. Use an ordinary extract, or a smaller one.',
  });
}

/** What cannot be written on the way. */
export function cannotWrite(error: unknown): Stopped {
  const code = codeOf(error);
  return new Stopped(
    code === 'ENOSPC' || code === 'EDQUOT'
      ? {
          code: 'shelf.full',
          message: `The map could not be put on the shelf: ${messageOf(error)}. Make room there and import it again; nothing of it was kept.`,
        }
      : {
          code: 'shelf.unwritable',
          message: `The map could not be put on the shelf: ${messageOf(error)}. Nothing of it was kept.`,
        },
  );
}
