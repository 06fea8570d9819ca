import { spawn } from 'node:child_process';

/** How each system opens an address in the user's browser. */
const OPENERS: Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>> = {
  darwin: ['open'],
  // an address without & needs no shell's quoting; rundll32 takes it as one word
  win32: ['rundll32', 'url.dll,FileProtocolHandler'],
  linux: ['xdg-open'],
};

/**
 * Opens the address in the user's browser, if the system knows how. The address is for one page and one minute,
 * so that its being seen in the list of processes does no harm.
 */
export function openBrowser(address: string, platform: NodeJS.Platform): void {
  const [command, ...before] = OPENERS[platform] ?? [];
  if (command === undefined) return;
  const opener = spawn(command, [...before, address], { stdio: 'ignore', detached: true });
  // no opener: the address stands in the terminal
  opener.on('error', () => {});
  opener.unref();
}
