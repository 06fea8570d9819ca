import { given } from '../../../geo/given.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { GPX_MAX_BYTES } from '../../contract/limits.ts';
import type { Settings } from '../../contract/settings.ts';
import { readBytes } from '../../services/files/read-bytes.ts';
import { sha256Of } from '../../services/files/sha256.ts';
import type { HandOverWork } from '../../services/hand-over/hand-over-from-files.ts';
import { type ManyOf, type ToHand, workOfPair } from '../../services/hand-over/hand-over-many.ts';
import { knownOf } from '../../services/handed/known-of.ts';
import type { Library } from '../../services/library/library.ts';
import { namedVehicle } from '../../services/library/named-vehicle.ts';
import { shelfFolder } from '../../services/shelf/where-shelf.ts';
import { yardNamed } from '../arguments.ts';
import type { Terminal } from '../terminal.ts';
import { settingsWith } from './firm-of.ts';
import { fromLibrary } from './from-library.ts';
import type { HandOverArguments } from './hand-over-arguments.ts';

/** What is to be handed over: one drive with one vehicle, or several pairs of the library. */
type Asked =
  | { readonly kind: 'one'; readonly work: HandOverWork; readonly own: Settings }
  | {
      readonly kind: 'several';
      readonly pairs: readonly ToHand[];
      readonly asked: ManyOf['asked'];
      readonly own: Settings;
    };

/** What the words after `lanegauge hand-over` ask for. */
export async function askedOf(
  words: HandOverArguments,
  library: Library,
  terminal: Terminal,
): Promise<Result<Asked>> {
  const {
    json: _,
    outFolder: __,
    pdf: ___,
    yardFolder,
    noNotes,
    fromLibrary: ids,
    vehicle,
    firm,
    ...files
  } = words;
  const { dataFolder } = terminal;
  const yard = yardNamed({ noNotes, ...given({ yardFolder }) }, dataFolder);
  const request = { ...files, shelf: shelfFolder(dataFolder), ...given({ yard }) };
  const settings = await settingsWith(firm, terminal);
  if (!settings.ok) return settings;
  const own = settings.value;
  if (ids === undefined) {
    const named = vehicle && (await namedVehicle(vehicle, async () => library));
    if (named?.ok === false) return named;
    const card = named?.value.card;
    const known = await knownOfFiles(library, files, card);
    return ok({ kind: 'one', own, work: { request: { ...request, ...given({ card }) }, own, known } });
  }
  const pairs = fromLibrary(library, ids);
  if (!pairs.ok) return pairs;
  // the drive's file is the library's, spare and country are the grid's; what is typed goes before what is kept
  const { routePath: ____, ...typed } = request;
  const asked = {
    margins: own.margins,
    units: own.units,
    ...given({ country: own.country ?? undefined }),
    ...typed,
  };
  const [only, ...more] = pairs.value;
  return only !== undefined && more.length === 0
    ? ok({ kind: 'one', own, work: workOfPair(only, { library, asked, own }) })
    : ok({ kind: 'several', pairs: pairs.value, asked, own });
}

/** What cannot be read is told by the check. */
async function knownOfFiles(
  library: Library,
  { routePath }: { readonly routePath: string },
  card: VehicleCard | undefined,
) {
  const bytes = await readBytes(routePath, 'drive', GPX_MAX_BYTES);
  return bytes.ok ? knownOf(library, sha256Of(bytes.value), card) : undefined;
}
