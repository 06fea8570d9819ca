import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, type BrowserWindow, crashReporter, session } from 'electron';
import { readAssets } from '../assets.ts';
import { createDispatch } from '../dispatch.ts';
import { type Backend, openBackend } from '../services/backend.ts';
import { dataFolder } from '../services/data-folder.ts';
import { openEngine } from '../services/engine/open-engine.ts';
import { PROGRAM } from '../version.ts';
import { blockNetwork, denyPermissions, guardContents } from './guard.ts';
import { serveIpc } from './ipc-host.ts';
import { setMenu } from './menu.ts';
import { handedFiles, namedFiles } from './named-files.ts';
import { printSheet } from './print-sheet.ts';
import { registerScheme, serveScheme } from './scheme.ts';
import { openWindow } from './window.ts';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));

/** What the program needs from around it; a test gives its own. */
export interface AppSurroundings {
  readonly argv: readonly string[];
  readonly folder: string;
  readonly env: NodeJS.ProcessEnv;
  readonly platform: NodeJS.Platform;
  /** where a packed program keeps what lies beside it */
  readonly resources: string;
}

/** Starts the program in its own window. Everything that must happen before Electron is ready happens at once. */
export async function startApp(around: AppSurroundings): Promise<void> {
  app.enableSandbox();
  registerScheme();
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

  await app.whenReady();
  const data = dataFolder(around.env, around.platform);
  const backend = await openBackend({
    host: 'window',
    dataFolder: data,
    sampleFolder: join(app.isPackaged ? around.resources : ROOT, 'sample-routes'),
    engine: openEngine(),
    now: () => new Date(),
    printSheet,
  });
  app.on('will-quit', () => void backend.close());
  if (files.length === 0) void backend.sampleAhead();
  opening.to(backend);
  await secure(backend);
  setMenu(around.platform);
  window = await openWindow(data);
}

async function secure(backend: Backend): Promise<void> {
  const { defaultSession } = session;
  const tileAddress = () => backend.settings().tiles?.address;
  denyPermissions(defaultSession);
  blockNetwork(defaultSession, tileAddress);
  // servers of background pictures ask who calls
  defaultSession.setUserAgent(PROGRAM.replace(' ', '/'));
  serveScheme(defaultSession, await readAssets(join(ROOT, '.build', 'window')), tileAddress);
  serveIpc(
    createDispatch(backend.services, (error) => console.error(error)),
    backend.uploads,
  );
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
