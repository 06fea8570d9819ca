import { ok } from '../../../geo/result.ts';
import { DEFAULT_SETTINGS } from '../../contract/default-settings.ts';
import { type Settings, settingsSchema } from '../../contract/settings.ts';
import { rememberedFile } from '../files/remembered-file.ts';
import type { Store } from '../files/store.ts';
import { mergeSettings } from './merge-settings.ts';

/** Reads the settings, or starts with the defaults. */
export async function openSettings(folder: string, now: () => Date): Promise<Store<Settings>> {
  const file = await rememberedFile({
    folder,
    name: 'settings.json',
    what: 'settings file',
    schema: settingsSchema,
    now,
  });
  const current = () => file.last() ?? DEFAULT_SETTINGS;
  return {
    current,
    notices: file.notices,
    refresh: file.refresh,
    async save(settings, known = current()) {
      let say: readonly string[] = [];
      const updated = await file.update((found) => {
        const merged = mergeSettings({ known, mine: settings, theirs: found ?? known });
        say = merged.say;
        return ok(merged.settings);
      });
      if (!updated.ok) return updated;
      return ok({ value: updated.value.value, say: [...updated.value.notices, ...say] });
    },
  };
}
