import { join } from 'node:path';

/** Where the shelf lies in the user's data folder. */
export function shelfFolder(dataFolder: string): string {
  return join(dataFolder, 'shelf');
}
