import { existsSync } from 'node:fs';
import { basename } from 'node:path';

/** What somebody typed for a vehicle. */
export interface TypedVehicle {
  readonly typed: string;
  /** the same taken for the path of a card */
  readonly path: string;
}

/** Whether it can only be the name or id of a vehicle in the library: no path, and no file lies there. */
export function isName({ typed, path }: TypedVehicle): boolean {
  return basename(typed) === typed && !/\.json$/i.test(typed) && !existsSync(path);
}
