import { fileURLToPath } from 'node:url';
import { BrowserWindow, dialog, screen } from 'electron';
import { builtFile } from '../services/built-file.ts';
import { ORIGIN } from './scheme.ts';
import { keepPlace, type Place } from './window-place.ts';

const PRELOAD = fileURLToPath(builtFile('electron/preload.cjs'));

/** Opens the window where it last stood, if that place is still on a screen. */
export async function openWindow(dataFolder: string): Promise<BrowserWindow> {
  const { place, keep } = await keepPlace(dataFolder);
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
  recover(window);
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

/** A page that dies is loaded once more; the second time the user decides. */
function recover(window: BrowserWindow): void {
  let died = 0;
  const { webContents } = window;
  webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit' || window.isDestroyed()) return;
    died++;
    if (died === 1) {
      webContents.reload();
      return;
    }
    const pressed = dialog.showMessageBoxSync(window, {
      type: 'error',
      message: 'The window stopped working.',
      detail: 'Your vehicles and settings are safe on disk.',
      buttons: ['Load it again', 'Close'],
      defaultId: 0,
      cancelId: 1,
    });
    if (pressed === 0) webContents.reload();
    else window.destroy();
  });
}
