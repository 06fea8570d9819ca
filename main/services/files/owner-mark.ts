import { createHash } from 'node:crypto';
import { hostname } from 'node:os';

const HOST = createHash('sha256').update(hostname()).digest('hex').slice(0, 8);

/** What a file or folder that passes carries in its name: the computer and the process it belongs to. */
export const OWN_MARK = `${HOST}-${process.pid}`;

/** How such a mark reads in a name, as a part of a larger expression. */
export const MARK_PATTERN = '[0-9a-f]{8}-\\d{1,10}';

/** Whether the process that left this mark is known to have ended. Of another computer's nothing is known. */
export function hasEnded(mark: string): boolean {
  const [host, pid] = mark.split('-');
  if (host !== HOST || pid === undefined) return false;
  try {
    // signal 0 asks, and does nothing
    process.kill(Number(pid), 0);
    return false;
  } catch (error) {
    // another user's process may not be asked, but it is there
    return !(error instanceof Error && 'code' in error && error.code === 'EPERM');
  }
}

/** Whether a mark was left by a program of this computer. */
export function isOfThisComputer(mark: string): boolean {
  return mark.startsWith(`${HOST}-`);
}
