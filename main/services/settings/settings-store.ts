import { DEFAULT_SETTINGS } from '../../contract/default-settings.ts';
import { type Settings, settingsSchema } from '../../contract/settings.ts';
import { keptFile } from '../files/kept-file.ts';
import type { Store } from '../files/store.ts';

/** Reads the settings, or starts with the defaults. */
export async function openSettings(folder: string, now: () => Date): Promise<Store<Settings>> {
  const file = keptFile({
    folder,
    name: 'settings.json',
    what: 'settings file',
    schema: settingsSchema,
    now,
  });
  const { value, notices } = await file.read();
  let current = value ?? DEFAULT_SETTINGS;
  return {
    notices,
    current: () => current,
    async save(settings) {
      const written = await file.write(settings);
      if (written.ok) current = settings;
      return written;
    },
  };
}
