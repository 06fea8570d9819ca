import { randomUUID } from 'node:crypto';
import { type KeptDay, keptDay } from '../../geo/day/kept-day.ts';
import { given } from '../../geo/given.ts';
import { readLoad } from '../../geo/load/list/read-load.ts';
import { ok, type Result } from '../../geo/result.ts';
import type { Description, Sample } from '../contract/description.ts';
import type { FollowedDrive } from '../contract/followed-drive.ts';
import type { OwnMap, Source } from '../contract/source.ts';
import type { Services } from '../dispatch.ts';
import { PROGRAM } from '../version.ts';
import type { Engine } from './engine/engine.ts';
import type { NamedFile } from './engine/protocol.ts';
import { fetchCalls } from './fetch-calls.ts';
import type { Fetcher } from './fetched/fetcher.ts';
import type { PrintSheet } from './hand-over/finish-hand-over.ts';
import { handOverCalls } from './hand-over-calls.ts';
import { notesOf } from './library/local-notes.ts';
import { noteCalls } from './note-calls.ts';
import type { ImportPart } from './shelf/put-on-shelf.ts';
import { countMaps } from './shelf/shelf-folder.ts';
import { shelfCalls } from './shelf-calls.ts';
import type { Sources } from './sources.ts';
import type { Stores } from './stores.ts';
import type { Notifier } from './watch/notifier.ts';
import { changeDrive } from './yard/change-drive.ts';
import { type YardParts, yardCalls } from './yard-calls.ts';

/** What the calls are answered from. */
export interface ServiceParts {
  readonly engine: Engine;
  now(): Date;
  readonly sample: Sample;
  readonly stores: Stores;
  readonly sources: Sources;
  readonly notifier: Notifier;
  /** the shelf's folder */
  readonly shelf: string;
  readonly dataFolder: string;
  readonly judge?: YardParts['judge'];
  readonly printSheet?: PrintSheet;
  readonly importPart: ImportPart;
  readonly fetcher: Fetcher;
}

/** Binds every call of the contract to what answers it. */
export function createServices(parts: ServiceParts): Services {
  return {
    async describe() {
      await parts.stores.refresh();
      return ok(describe(parts, await countMaps(parts.shelf)));
    },
    ...openingCalls(parts),
    ...keepingCalls(parts),
    ...noteCalls(parts),
    ...yardCalls(parts),
    ...handOverCalls(parts),
    ...shelfCalls(parts),
    ...fetchCalls(parts),
    check: (request, hooks) => parts.engine.ask('check', { ...request, ...madeWith(parts) }, hooks),
    wayRound: (request, hooks) => parts.engine.ask('wayRound', { ...request, ...madeWith(parts) }, hooks),
    services: (request, hooks) => parts.engine.ask('services', { ...request, ...madeWith(parts) }, hooks),
    findPlaces: (request, hooks) => parts.engine.ask('findPlaces', { ...request, shelf: parts.shelf }, hooks),
    planDrive: (request, hooks) =>
      parts.engine.ask('planDrive', { ...request, newId: randomUUID(), ...madeWith(parts) }, hooks),
    takeWay: (request, hooks) => parts.engine.ask('takeWay', { ...request, newId: randomUUID() }, hooks),
    tile: (request, hooks) => parts.engine.ask('tile', request, hooks),
    strip: (request, hooks) => parts.engine.ask('strip', request, hooks),
    readLoad: async ({ name, text }) => readLoad(text, name),
    async watch(_, { onProgress, signal }) {
      await parts.notifier.watch(onProgress, signal);
      return ok({});
    },
  };
}

/** What every check is made with: the moment, and what the firm knows of places. */
function madeWith({ now, stores }: Pick<ServiceParts, 'now' | 'stores'>) {
  return { made: now().toISOString(), localNotes: notesOf(stores.library) };
}

function describe({ sample, stores, notifier }: ServiceParts, shelfMaps: number): Description {
  const { settings, fleet, loads, recents } = stores;
  return {
    program: PROGRAM,
    settings: settings.current(),
    vehicles: [...fleet.current()],
    loads: [...loads.current()],
    recents: recents.list(),
    sample,
    shelfMaps,
    opened: notifier.takeWaiting(),
    notices: [...stores.notices()],
  };
}

/** The calls that read a file of the user's and remember it as opened. */
function openingCalls({
  engine,
  sources,
  stores,
  shelf,
}: ServiceParts): Pick<Services, 'openMap' | 'openDrive' | 'keepLeaveAt' | 'keepDay' | 'rememberDrives'> {
  let map: OwnMap | undefined;
  const fileOf = (source: Source): Result<{ file: NamedFile }> => {
    const found = sources.find(source);
    return found.ok ? ok({ file: found.value }) : found;
  };
  /** where an open drive will be found again */
  const kept = new Map<string, Source>();
  /** what was listed as opened before, by where it came from */
  const listed = new Map<string, Source>();
  return {
    async openMap({ source, about }, hooks) {
      const wanted = source.kind === 'shelf' ? ok({ shelf }) : fileOf(source);
      if (!wanted.ok) return wanted;
      const drive = about === undefined ? undefined : sources.find(about);
      if (drive && !drive.ok) return drive;
      const opened = await engine.ask(
        'openMap',
        { ...wanted.value, ...given({ about: drive?.value }) },
        hooks,
      );
      if (!opened.ok) return opened;
      const keptAs = await sources.remember(source, 'map');
      map = { name: opened.value.name, ...given({ source: keptAs }) };
      return opened;
    },
    async openDrive({ source, track }, hooks) {
      const file = sources.find(source);
      if (!file.ok) return file;
      const driveId = randomUUID();
      const { unread } = keptWith(stores, source);
      const asked = { driveId, file: file.value, ...given({ track, unread }) };
      const opened = await engine.ask('openDrive', asked, hooks);
      if (!opened.ok) return opened;
      const keptAs = await sources.remember(source, 'drive', map);
      if (!keptAs) return opened;
      remember(kept, driveId, keptAs);
      return ok({ ...opened.value, ...chosenFor(stores, keptAs) });
    },
    async keepDay({ driveId, day }) {
      const keptAs = kept.get(driveId);
      if (keptAs === undefined) return ok({});
      const done =
        keptAs.kind === 'library'
          ? await changeDrive(stores.library, keptAs.id, { plan: day ?? null })
          : await stores.recents.keepDay(keptAs, day);
      return done.ok ? ok({}) : done;
    },
    async rememberDrives({ sources: found, insteadOf = [] }) {
      // a state of a drive made here belongs to the map it was made on
      const on = insteadOf.length > 0 || found.length === 1 ? map : undefined;
      for (const source of [...found].reverse()) {
        const keptAs = await sources.remember(source, 'drive', on);
        if (keptAs?.kind === 'recent') remember(listed, keyOf(source), keptAs);
      }
      for (const source of insteadOf) {
        const was = listed.get(keyOf(source));
        const stays = found.some((each) => keyOf(listed.get(keyOf(each)) ?? each) === keyOf(was ?? source));
        if (was?.kind === 'recent' && !stays) await stores.recents.forget(was.id);
      }
      return ok({});
    },
    async keepLeaveAt({ driveId, leaveAt }) {
      const keptAs = kept.get(driveId);
      // a drive that is not remembered has nothing to keep its time with
      if (keptAs === undefined) return ok({});
      const done =
        keptAs.kind === 'library'
          ? await changeDrive(stores.library, keptAs.id, { leaveAt: leaveAt ?? null })
          : await stores.recents.keepLeaveAt(keptAs, leaveAt);
      return done.ok ? ok({}) : done;
    },
  };
}

/** What was chosen for a drive when it was open before. */
function chosenFor({ library, recents }: Stores, keptAs: Source): Pick<FollowedDrive, 'leaveAt' | 'day'> {
  if (keptAs.kind !== 'library')
    return given({ leaveAt: recents.leaveAtOf(keptAs), day: recents.dayOf(keptAs) });
  const body = library.find('drive', keptAs.id)?.versions[0]?.body;
  return given({ leaveAt: body?.leaveAt, day: keptWith({ library }, keptAs).day });
}

/** The day of a drive of the library, or that it cannot be read. */
function keptWith({ library }: Pick<Stores, 'library'>, source: Source): Partial<KeptDay> {
  if (source.kind !== 'library') return {};
  const plan = library.find('drive', source.id)?.versions[0]?.body.plan;
  return plan === undefined ? {} : keptDay(plan);
}

const keyOf = (source: Source): string => JSON.stringify(source);

/** As many open drives as one window can have in a day. */
const DRIVES_MAX = 1000;

function remember(kept: Map<string, Source>, driveId: string, source: Source): void {
  if (kept.size === DRIVES_MAX) kept.delete(kept.keys().next().value ?? '');
  kept.set(driveId, source);
}

/** The calls that change what is kept for the user. */
function keepingCalls({
  stores,
}: ServiceParts): Pick<Services, 'saveVehicles' | 'saveLoad' | 'saveSettings' | 'forgetRecent'> {
  const { settings, fleet, loads, recents } = stores;
  return {
    async saveVehicles({ vehicles, known }) {
      const saved = await fleet.save(vehicles, known);
      return saved.ok ? ok({ vehicles: [...saved.value.value], say: [...saved.value.say] }) : saved;
    },
    async saveLoad({ vehicleId, load, known }) {
      const saved = await loads.save(vehicleId, load.items, known?.items);
      return saved.ok ? ok({ items: [...saved.value.value], say: [...saved.value.say] }) : saved;
    },
    async saveSettings(request) {
      const saved = await settings.save(request.settings, request.known);
      return saved.ok ? ok({ settings: saved.value.value, say: [...saved.value.say] }) : saved;
    },
    async forgetRecent({ id }) {
      const left = await recents.forget(id);
      return left.ok ? ok({ recents: left.value }) : left;
    },
  };
}
