import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { setMenu } from '../../../main/electron/menu.ts';
import { openWindow } from '../../../main/electron/window.ts';
import { keepPlace } from '../../../main/electron/window-place.ts';
import { BrowserWindow as FakeWindow, Menu } from './fake-electron.ts';

vi.mock('electron', () => import('./fake-electron.ts'));

const LOG = { path: '/data/lanegauge.log', note() {} };

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-window-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

/** Where the window opens on a screen of 1920 by 1080, after this was kept of the last time. */
async function opensAt(kept: string) {
  await writeFile(join(folder, 'window.json'), kept);
  await openWindow(await keepPlace(folder), LOG);
  const { x, y, width, height } = FakeWindow.made.at(-1)?.options ?? {};
  return { x, y, width, height };
}

describe('the window', () => {
  const place = (x: number, y: number) =>
    JSON.stringify({ x, y, width: 1000, height: 700, maximized: false });
  const MIDDLE = { x: undefined, y: undefined, width: 1280, height: 860 };

  it('opens where it last stood', async () => {
    expect(await opensAt(place(300, 200))).toEqual({ x: 300, y: 200, width: 1000, height: 700 });
  });

  it.each([
    ['beside every screen that is left', place(2600, 200)],
    ['to the left of them', place(-1000, 200)],
    ['with its title above them', place(300, -40)],
    ['below them', place(300, 1080)],
    ['at a place that is none', '{"x":1e9,"y":0,"width":1,"height":1,"maximized":false}'],
    ['at a place nobody can read', '{"x":'],
  ])('that last stood %s opens in the middle', async (_, kept) => {
    expect(await opensAt(kept)).toEqual(MIDDLE);
  });
});

describe('the menu', () => {
  type Entry = { role?: string; submenu?: Entry[] };
  const rolesOn = (platform: NodeJS.Platform) => {
    setMenu(platform, LOG.path);
    const roles = (entries: Entry[]): string[] =>
      entries.flatMap(({ role, submenu }) => [...(role ? [role] : []), ...roles(submenu ?? [])]);
    return roles(Menu.set as Entry[]);
  };

  it.each(['linux', 'win32', 'darwin'] as const)(
    'on %s has the keys for size and full screen',
    (platform) => {
      expect(rolesOn(platform)).toEqual(
        expect.arrayContaining(['editMenu', 'resetZoom', 'zoomIn', 'zoomOut', 'togglefullscreen', 'help']),
      );
    },
  );

  it('has recent files where the system keeps a menu of them, and a way to forget them', () => {
    expect(rolesOn('darwin')).toEqual(expect.arrayContaining(['recentDocuments', 'clearRecentDocuments']));
    expect(rolesOn('linux')).not.toContain('recentDocuments');
    expect(rolesOn('linux')).toContain('quit');
  });
});
