import type { Library } from '../library/library.ts';
import { openSettings } from '../settings/settings-store.ts';
import type { YardAsked } from './yard-of.ts';

/** What a grid of a library on this computer is asked by: with the settings kept here. */
export async function askedBy(
  library: Library,
  { dataFolder, now }: Pick<YardAsked, 'dataFolder' | 'now'>,
): Promise<YardAsked> {
  const settings = (await openSettings(dataFolder, now)).current();
  return { library, settings, dataFolder, now };
}
