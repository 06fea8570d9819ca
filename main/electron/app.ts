import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, type BrowserWindow, crashReporter, session } from 'electron';
import { readAssets } from '../assets.ts';
import { createDispatch } from '../dispatch.ts';
import { type Backend, openBackend } from '../services/backend.ts';
import { openEngine } from '../services/engine/open-engine.ts';
import { PROGRAM } from '../version.ts';
import { finishFirst } from './finish-first.ts';
import { blockNetwork, denyPermissions, guardContents } from './guard.ts';
import { type Calls, serveIpc } from './ipc-host.ts';
import { setMenu } from './menu.ts';
import { handedFiles, namedFiles } from './named-files.ts';
import { printSheet } from './print-sheet.ts';
import type { ProgramLog } from './program-log.ts';
import { registerScheme, serveScheme } from './scheme.ts';
import { openWindow } from './window.ts';
import { keepPlace } from './window-place.ts';

/** As in electron-builder.yml: a test holds them equal. */
export const APP_ID = 'net.lanegauge.desktop';
const ROOT = fileURLToPath(new URL('../../../', import.meta.url));

/** What the program needs from around it; a test gives its own. */
export interface AppSurroundings {
  readonly argv: readonly string[];
  readonly folder: string;
  /** where the user's own files lie */
  readonly data: string;
  readonly log: ProgramLog;
  readonly platform: NodeJS.Platform;
  /** where a packed program keeps what lies beside it */
  readonly resources: string;
}

/** Starts the program in its own window. Everything that must happen before Electron is ready happens at once. */
export async function startApp(around: AppSurroundings): Promise<void> {
  const { data, log } = around;
  log.note('started');
  app.enableSandbox();
  registerScheme();
  // by this name Windows groups the window in its bar and keeps its recent files
  app.setAppUserModelId(APP_ID);
  crashReporter.start({ uploadToServer: false });

  const opening = queueFiles();
  // macOS sends this before the program is ready when it was started by a file
  app.on('open-file', (event, path) => {
    event.preventDefault();
    opening.add(path);
  });
  const files = namedFiles(around.argv, { isPackaged: app.isPackaged, folder: around.folder });
  // the command line of a second start comes in no certain order: what it means is sent along
  if (!app.requestSingleInstanceLock({ files })) {
    app.quit();
    return;
  }
  for (const file of files) opening.add(file);

  let window: BrowserWindow | undefined;
  app.on('second-instance', (_event, _argv, _folder, data) => {
    for (const file of handedFiles(data)) opening.add(file);
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  app.on('web-contents-created', (_event, contents) => guardContents(contents));
  app.on('window-all-closed', () => app.quit());
  app.on('child-process-gone', (_event, { type, reason, exitCode }) => {
    if (reason !== 'clean-exit') log.note(`${type} gone: ${reason}, ${exitCode}`);
  });

  // its thread loads its code meanwhile
  const engine = openEngine();
  engine.warm();
  await app.whenReady();
  const backend = await openBackend({
    dataFolder: data,
    sampleFolder: join(app.isPackaged ? around.resources : ROOT, 'sample-routes'),
    engine,
    now: () => new Date(),
    printSheet,
  });
  if (files.length === 0) void backend.sampleAhead();
  opening.to(backend);
  const calls = await secure(backend, log);
  setMenu(around.platform, log.path);
  const place = await keepPlace(data);
  finishFirst(async () => {
    await calls.stop();
    await Promise.all([backend.close(), place.kept()]);
  });
  window = await openWindow(place, log);
}

/** The page that may ask, what it may ask for, and nothing else. @returns the calls it makes */
async function secure(backend: Backend, log: ProgramLog): Promise<Calls> {
  const { defaultSession } = session;
  const tileAddress = () => backend.settings().tiles?.address;
  denyPermissions(defaultSession);
  blockNetwork(defaultSession, tileAddress);
  // servers of background pictures ask who calls
  defaultSession.setUserAgent(PROGRAM.replace(' ', '/'));
  serveScheme(defaultSession, await readAssets(join(ROOT, '.build', 'window')), tileAddress);
  const complain = (error: unknown) => {
    console.error(error);
    log.note('a call failed', error);
  };
  return serveIpc(createDispatch(backend.services, complain), backend.uploads);
}

/** Files named before the backend is open wait for it. */
function queueFiles() {
  const waiting: string[] = [];
  let backend: Backend | undefined;
  const open = async (path: string, into: Backend) => {
    const added = await into.openPath(path);
    if (added.ok) app.addRecentDocument(path);
  };
  return {
    add(path: string) {
      if (backend) void open(path, backend);
      else waiting.push(path);
    },
    to(opened: Backend) {
      backend = opened;
      for (const path of waiting.splice(0)) void open(path, opened);
    },
  };
}
