import { fileURLToPath } from 'node:url';
import { BrowserWindow, dialog, screen } from 'electron';
import { builtFile } from '../services/built-file.ts';
import type { ProgramLog } from './program-log.ts';
import { ORIGIN } from './scheme.ts';
import type { KeptPlace, Place } from './window-place.ts';

const PRELOAD = fileURLToPath(builtFile('electron/preload.cjs'));

/** Opens the window where it last stood, if that place is still on a screen. */
export async function openWindow({ place, keep }: KeptPlace, log: ProgramLog): Promise<BrowserWindow> {
  const window = new BrowserWindow({
    ...boundsOf(place),
    minWidth: 820,
    minHeight: 560,
    show: false,
    title: 'Lanegauge',
    webPreferences: {
      preload: PRELOAD,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
      spellcheck: false,
    },
  });
  if (place?.maximized) window.maximize();
  window.once('ready-to-show', () => window.show());
  window.on('close', () => keep({ ...window.getNormalBounds(), maximized: window.isMaximized() }));
  recover(window, log);
  await window.loadURL(`${ORIGIN}/`);
  return window;
}

function boundsOf(place: Place | undefined) {
  const middle = { width: 1280, height: 860 };
  if (!place) return middle;
  const { x, y, width, height } = place;
  const area = screen.getDisplayMatching({ x, y, width, height }).workArea;
  const onScreen = x < area.x + area.width && x + width > area.x && y >= area.y && y < area.y + area.height;
  return onScreen ? { x, y, width, height } : middle;
}

const SAFE = 'Your vehicles, drives and settings are safe on disk.';

/** A page that dies is loaded once more; the second time the user decides, and where it does not answer. */
function recover(window: BrowserWindow, log: ProgramLog): void {
  let died = 0;
  const { webContents } = window;
  webContents.on('preload-error', (_event, _path, error) => {
    log.note('the page was not readied', error);
    dialog.showErrorBox('Lanegauge', `The window could not be readied. Install Lanegauge again. ${SAFE}`);
  });
  let asking: AbortController | undefined;
  webContents.on('unresponsive', async () => {
    if (asking !== undefined || window.isDestroyed()) return;
    log.note('the window does not answer');
    asking = new AbortController();
    const { response } = await dialog.showMessageBox(window, {
      type: 'warning',
      message: 'The window does not answer.',
      detail: `It may be at work on something large. ${SAFE}`,
      buttons: ['Wait', 'Load it again'],
      defaultId: 0,
      cancelId: 0,
      signal: asking.signal,
    });
    const answered = asking.signal.aborted;
    asking = undefined;
    if (response !== 1 || answered || window.isDestroyed()) return;
    died = 0;
    webContents.forcefullyCrashRenderer();
  });
  // it answers again by itself: the question is taken back
  webContents.on('responsive', () => asking?.abort());
  webContents.on('render-process-gone', (_event, { reason, exitCode }) => {
    if (reason === 'clean-exit' || window.isDestroyed()) return;
    log.note(`the window is gone: ${reason}, ${exitCode}`);
    died++;
    if (died === 1) {
      webContents.reload();
      return;
    }
    const pressed = dialog.showMessageBoxSync(window, {
      type: 'error',
      message: 'The window stopped working.',
      detail: SAFE,
      buttons: ['Load it again', 'Close'],
      defaultId: 0,
      cancelId: 1,
    });
    if (pressed === 0) webContents.reload();
    else window.destroy();
  });
}
