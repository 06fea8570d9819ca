import { open } from 'node:fs/promises';
import { codeOf } from './system-error.ts';

/** Systems that cannot bring a folder to the disk by itself say so in one of these ways. */
const NO_FOLDER_SYNC = ['EPERM', 'EISDIR', 'EINVAL', 'EACCES', 'ENOTSUP', 'EBADF'];

/** A name that was changed lasts through a power cut only once its folder is on the disk too. */
export async function syncFolder(folder: string): Promise<void> {
  try {
    const handle = await open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (!NO_FOLDER_SYNC.includes(String(codeOf(error)))) throw error;
  }
}
