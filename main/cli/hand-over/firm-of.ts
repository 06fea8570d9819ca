import { ok, type Result } from '../../../geo/result.ts';
import type { Settings } from '../../contract/settings.ts';
import { openSettings } from '../../services/settings/settings-store.ts';
import type { Terminal } from '../terminal.ts';

/** The settings as they are kept, with the heading and telephone typed, which are kept from then on as the window keeps them. */
export async function settingsWith(
  typed: Partial<Settings['firm']>,
  { dataFolder, now, complain }: Pick<Terminal, 'dataFolder' | 'now' | 'complain'>,
): Promise<Result<Settings>> {
  const store = await openSettings(dataFolder, now);
  const known = store.current();
  if (Object.keys(typed).length === 0) return ok(known);
  const saved = await store.save({ ...known, firm: { ...known.firm, ...typed } }, known);
  if (!saved.ok) return saved;
  for (const sentence of saved.value.say) complain(sentence);
  return ok(saved.value.value);
}
