import { Worker } from 'node:worker_threads';

/**
 * A thread that speaks the engine's language without a map: it reports, waits, dies or keeps busy as the file's
 * name says, and forgets everything when it dies.
 */
const SCRIPT = `
const { parentPort } = require('node:worker_threads');
let map; const drives = new Set(); const waiting = new Map();
const reply = (id, value) => parentPort.postMessage({ kind: 'reply', id, result: { ok: true, value } });
const refuse = (id, code) => parentPort.postMessage({ kind: 'reply', id, result: { ok: false, error: { code, message: code } } });
parentPort.on('message', ({ kind, id, name, request }) => {
  if (kind === 'cancel') { if (waiting.delete(id)) refuse(id, 'cancelled'); return; }
  const file = request.file?.name ?? request.made ?? '';
  if (file === 'die') process.exit(1);
  if (file === 'throw') throw new Error('a mistake');
  if (file === 'gone') throw Object.assign(new Error('no part'), { code: 'ERR_MODULE_NOT_FOUND' });
  if (file === 'full') { const all = []; for (;;) all.push(new Array(1e6).fill(0.5)); }
  if (file.endsWith('busy')) for (;;);
  if (file === 'wait') { waiting.set(id, 1); parentPort.postMessage({ kind: 'progress', id, progress: { what: 'waiting' } }); return; }
  if (name === 'openMap') { map = file; drives.clear(); return reply(id, map); }
  if (!map) return refuse(id, 'no-map');
  if (name === 'openDrive') { drives.add(request.driveId); return reply(id, request.driveId + ' on ' + map); }
  return drives.has(request.driveId) ? reply(id, 'checked ' + request.driveId + ' on ' + map + file) : refuse(id, 'no-drive');
});`;

/** Starts such a thread. */
export function scriptedThread(): Worker {
  return new Worker(SCRIPT, { eval: true, resourceLimits: { maxOldGenerationSizeMb: 32 } });
}
