import { type Session, shell, type WebContents } from 'electron';
import { tileOrigin } from '../contract/tile-address.ts';
import { ORIGIN } from './scheme.ts';

/** Pages the user's own browser may be asked to show: an object on the map, the data's licence. */
const OUTSIDE_HOSTS = new Set(['www.openstreetmap.org', 'opendatacommons.org']);

/** What the page could ask for and never gets: camera, place, notifications, devices. Electron grants all by default. */
export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}

/** Nothing leaves the computer but requests for the background pictures the user has set. */
export function blockNetwork(session: Session, tileAddress: () => string | undefined): void {
  session.webRequest.onBeforeRequest((details, answer) => {
    answer({ cancel: !isAllowed(details.url, tileAddress()) });
  });
}

/** Whether the window may fetch an address. */
function isAllowed(address: string, tileAddress: string | undefined): boolean {
  const url = parse(address);
  if (!url) return false;
  if (originOf(url) === ORIGIN || url.protocol === 'blob:' || url.protocol === 'data:') return true;
  // the inspector's own pages
  if (url.protocol === 'devtools:') return true;
  return tileAddress !== undefined && url.protocol === 'https:' && url.origin === tileOrigin(tileAddress);
}

/** Keeps a window on its page: no other address, no new window, no embedded view. */
export function guardContents(contents: WebContents): void {
  const stay = (event: { url: string; preventDefault(): void }) => {
    const url = parse(event.url);
    if (!url || originOf(url) !== ORIGIN) event.preventDefault();
  };
  contents.on('will-navigate', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(({ url }) => {
    if (isOutside(url)) void shell.openExternal(url);
    return { action: 'deny' };
  });
}

/** Whether an address may be handed to the user's browser. */
function isOutside(address: string): boolean {
  const url = parse(address);
  if (url?.protocol !== 'https:' || url.username !== '' || url.password !== '') return false;
  return url.port === '' && OUTSIDE_HOSTS.has(url.hostname);
}

function parse(address: string): URL | undefined {
  return URL.canParse(address) ? new URL(address) : undefined;
}

/** Node gives an own scheme the origin `null`, so it is put together here. */
function originOf(url: URL): string {
  return `${url.protocol}//${url.host}`;
}
