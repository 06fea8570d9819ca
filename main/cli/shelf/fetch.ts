import { chooseRoute } from '../../../geo/drive/gpx/choose-route.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { coverageOf } from '../../../geo/shelf/coverage.ts';
import { printBytes, printKm } from '../../../geo/units/print.ts';
import { counted, listed, quote } from '../../../geo/units/text.ts';
import type { Fetched, FetchPlan } from '../../contract/fetch.ts';
import { type Agreed, createFetcher } from '../../services/fetched/fetcher.ts';
import type { DriveToFetch } from '../../services/fetched/wanted.ts';
import { readRouteFile } from '../../services/route/read-route-file.ts';
import { openSettings } from '../../services/settings/settings-store.ts';
import { roadsOnShelf } from '../../services/shelf/roads-on-shelf.ts';
import { jsonText } from '../json-text.ts';
import { pathFrom, readWords, USAGE_HINT } from '../read-words.ts';
import type { ShelfCommand, ShelfSaid } from './command.ts';

/**
 * `shelf fetch --route R.gpx --by line|region [--from URL] [--yes]`: without `--yes` says what would be asked of whom,
 * and asks nothing.
 */
export const shelfFetch: ShelfCommand = async (words, terminal, tools) => {
  const read = readWords(words, { once: ['route', 'by', 'from'], flags: ['json', 'yes'] });
  if (!read.ok) return read;
  const { one, flag } = read.value;
  const [routePath, by] = [one('route'), one('by')];
  if (routePath === undefined || by === undefined)
    return fail(
      'usage',
      `Missing: ${listed([...(routePath ? [] : ['--route FILE.gpx']), ...(by ? [] : ['--by line|region'])])}. ${USAGE_HINT}`,
    );
  if (by !== 'line' && by !== 'region')
    return fail('usage', `--by ${quote(by)} is neither line nor region. ${USAGE_HINT}`);
  const drive = await readDrive(pathFrom(terminal.folder, routePath));
  if (!drive.ok) return drive;
  const server = one('from') ?? (await openSettings(terminal.dataFolder, terminal.now)).current().servers[by];
  const fetcher = createFetcher({ ...tools, dataFolder: terminal.dataFolder });
  const planned = await fetcher.plan(drive.value, by, server);
  if (!planned.ok) return planned;
  if (!flag('yes')) {
    const there = flag('json') ? [] : await sayThere(tools.shelf, drive.value);
    return ok(sayPlan(planned.value, there, flag('json')));
  }
  let plan = planned.value;
  // each step leads to the next, until there is a map or nothing to ask for
  for (;;) {
    const agreed = agreedTo(plan);
    if (agreed === undefined) return fail('fetch.nothing', plan.say.join(' '));
    const taken: Result<Fetched> = await fetcher.take(
      drive.value,
      { ...agreed, server },
      {
        signal: terminal.signal,
        onProgress: ({ what, share }) => terminal.progress.steps(what, share),
      },
    );
    if (!taken.ok) return taken;
    if (taken.value.kind === 'maps') return ok(sayFetched(taken.value, flag('json')));
    plan = taken.value.plan;
  }
};

function agreedTo(plan: FetchPlan): Agreed | undefined {
  if (plan.by === 'line') return { by: 'line' };
  return plan.step === 'none' ? undefined : { by: 'region', step: plan.step, keepFiles: false };
}

/** All tracks of the file: a map is wanted for whichever is driven. */
async function readDrive(path: string): Promise<Result<DriveToFetch>> {
  const file = await readRouteFile(path);
  if (!file.ok) return file;
  const chosen = chooseRoute(file.value);
  if (!chosen.ok) return chosen;
  const name = chosen.value.route.name || path.split(/[/\\]/).at(-1) || path;
  return ok({ name, route: { segments: file.value.routes.flatMap(({ segments }) => segments) } });
}

/** What the shelf has of the drive already; nothing where it has no map. */
async function sayThere(shelf: string, { route }: DriveToFetch): Promise<readonly string[]> {
  const roads = await roadsOnShelf(shelf, route);
  if (!roads.ok) return [];
  const { bare, lengthM } = coverageOf(route, roads.value);
  const bareM = bare.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
  return [
    bareM === 0
      ? 'The shelf has roads along all of this drive already.'
      : `Not on the shelf: ${printKm(bareM)} of this drive of ${printKm(lengthM)} as drawn.`,
  ];
}

function sayPlan(plan: FetchPlan, there: readonly string[], json: boolean): ShelfSaid {
  if (json) return { text: jsonText({ plan }), exit: 0 };
  const figures =
    plan.by === 'line'
      ? [
          `About ${counted(plan.queries, 'question')} to ${plan.host}, about ${printBytes(plan.bytes)}, about ${sayMinutes(plan.seconds)}.`,
        ]
      : [];
  return {
    text: `${[...there, ...figures, ...plan.say, sayHowOn(plan)].filter((line) => line !== '').join('\n')}\n`,
    exit: 0,
  };
}

/** One `--yes` is for all steps that are left: whoever types it has not seen what the later ones take. */
function sayHowOn(plan: FetchPlan): string {
  const other = 'Another server is named with --from URL.';
  if (plan.by === 'line' || plan.step === 'maps') return `Nothing was asked. To do it, add --yes. ${other}`;
  if (plan.step === 'none') return '';
  const after =
    plan.step === 'index' ? 'the list, the sizes of the maps and the maps' : 'the sizes and the maps';
  return `Nothing was asked. To do it, add --yes: that fetches ${after} without asking again, however large they are. ${other}`;
}

function sayMinutes(seconds: number): string {
  const minutes = Math.max(1, Math.round(seconds / 60));
  return minutes === 1 ? 'a minute' : `${minutes} minutes`;
}

function sayFetched({ maps, lacking, notes }: Extract<Fetched, { kind: 'maps' }>, json: boolean): ShelfSaid {
  if (json) return { text: jsonText({ maps, lacking, notes }), exit: 0 };
  const lackingM = lacking.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
  return {
    text: `${[
      `On the shelf: ${listed(maps.map((name) => quote(name)))}.`,
      ...(lackingM > 0
        ? [
            `No road in what was fetched along ${printKm(lackingM)} of the drive: unknown until a map holds them.`,
          ]
        : []),
      ...notes,
    ].join('\n')}\n`,
    exit: 0,
  };
}
