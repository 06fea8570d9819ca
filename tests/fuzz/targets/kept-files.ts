import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DEFAULT_SETTINGS } from '../../../main/contract/default-settings.ts';
import { openSettings } from '../../../main/services/settings/settings-store.ts';
import { COACH_BUILT } from '../../main/contract/cards.ts';
import { fleetIn, loadsIn } from '../../support/library/kept-in.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { mutateJson } from '../make/mutate-json.ts';
import { sampleFiles } from '../make/samples.ts';
import { faultInSentences } from '../promises.ts';
import type { Target } from '../target.ts';

const FLEET = [{ id: 'heron', card: COACH_BUILT }];
const ITEMS = (JSON.parse(new TextDecoder().decode(sampleFiles('loads')[0])) as { items: unknown }).items;
const now = () => new Date('2026-05-01T09:00:00Z');

interface Kept {
  readonly name: string;
  readonly sound: unknown;
  open(folder: string): Promise<{ notices(): readonly string[] }>;
}

const KEPT: readonly Kept[] = [
  { name: 'settings.json', sound: DEFAULT_SETTINGS, open: (folder) => openSettings(folder, now) },
  {
    name: 'fleet.json',
    sound: { format: 'lanegauge.fleet', version: 1, vehicles: FLEET },
    open: (folder) => fleetIn(folder, [], now),
  },
  {
    name: 'loads.json',
    sound: { format: 'lanegauge.loads', version: 1, loads: [{ vehicleId: 'heron', items: ITEMS }] },
    open: (folder) => loadsIn(folder, now, () => undefined),
  },
];

const root = mkdtempSync(join(tmpdir(), 'lanegauge-fuzz-'));
const folder = join(root, 'data');

/** The first byte says which file it is. */
export const keptFiles: Target = {
  name: 'settings, fleet and loads',
  weight: 2,
  make(random) {
    const which = random.below(KEPT.length);
    const { sound } = KEPT[which]!;
    const text = (value: unknown) => new TextEncoder().encode(JSON.stringify(value));
    const made = random.chance(0.5) ? mutateBytes(text(sound), random) : text(mutateJson(sound, random));
    return Uint8Array.from([which, ...made]);
  },
  async check(input) {
    const kept = KEPT[input[0]!]!;
    const content = input.slice(1);
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder);
    writeFileSync(join(folder, kept.name), content);
    const store = await kept.open(folder);
    const fault = faultInSentences(store.notices());
    if (fault !== undefined) return fault;
    const found = readdirSync(folder, { withFileTypes: true }).filter((each) => each.isFile());
    const files = found.map(({ name }) => readFileSync(join(folder, name)));
    return files.some((file) => file.equals(content))
      ? undefined
      : 'what the user had is gone from the folder';
  },
};
