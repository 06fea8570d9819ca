import { zipSync } from 'fflate';
import { sayKeepsPoints } from '../../geo/report/say-guessed.ts';
import type { ProgressOf, ValueOf } from '../../main/contract/calls.ts';
import { checkAsked } from '../actions/recheck.ts';
import { ask } from '../host/ask.ts';
import { downloadFile, fileName } from '../host/download.ts';
import { report } from '../state/check.ts';

/** A handing-over: just made, or kept and shown again. */
export type Handed = ValueOf<'handedSheet'> & Partial<Pick<ValueOf<'handOver'>, 'replaces' | 'say'>>;

export type HandOverState =
  | { readonly kind: 'working'; readonly what: string }
  /** the route is sparse: offers first to save the road followed as a track */
  | { readonly kind: 'sparse'; readonly say: string }
  /** asks once more */
  | { readonly kind: 'barred' }
  | { readonly kind: 'problem'; readonly say: string }
  | { readonly kind: 'done'; readonly handed: Handed };

interface Hooks {
  readonly signal: AbortSignal;
  onProgress(progress: ProgressOf<'handOver'>): void;
}

/** Checks the open drive anew and hands it over. @param evenBarred the user has said so */
export async function handOverDrive(evenBarred: boolean, hooks: Hooks): Promise<HandOverState> {
  const asked = checkAsked.peek();
  if (asked === undefined)
    return {
      kind: 'problem',
      say: 'Open a drive and choose a vehicle first: there is nothing to hand over.',
    };
  const reply = await ask('handOver', { ...asked, evenBarred }, hooks);
  if (reply.ok) return { kind: 'done', handed: reply.value };
  return reply.error.code === 'hand-over.barred'
    ? { kind: 'barred' }
    : { kind: 'problem', say: reply.error.message };
}

/** What the open drive is handed over without, because its points lie far apart; undefined where they do not. */
export function sparseDrive(): string | undefined {
  const shown = report.peek();
  return shown && sayKeepsPoints(shown);
}

/** A sheet as it was handed over. */
export async function keptSheet(number: string): Promise<HandOverState> {
  const reply = await ask('handedSheet', { number });
  return reply.ok ? { kind: 'done', handed: reply.value } : { kind: 'problem', say: reply.error.message };
}

const HOW_TO_OPEN = `How to open this on a phone

Unpack this archive first: tap it in the phone's list of files.

phone.html    the drive as a page. Opens in the browser and needs no network. Some mail programs take away files of
              this kind: then use the PDF beside it.
drive.gpx     the track with a mark at each place, for a navigation app that takes GPX.
sheet         the drive sheet to print or to read.

Signs and the road decide.
`;

/** Saves page, GPX and sheet together, as a small archive. */
export function saveForPhone(handed: Handed): void {
  const { files } = handed;
  const own = (name: string) => (files[name] === undefined ? {} : { [name]: bytesOf(files[name]) });
  const sheet = handed.pdf === undefined ? own('sheet.html') : { 'sheet.pdf': fromBase64(handed.pdf) };
  const all = { ...own('phone.html'), ...own('drive.gpx'), ...sheet, ...own('day.ics') };
  saveZip(`${handed.number} for the phone`, { ...all, 'how-to-open.txt': bytesOf(HOW_TO_OPEN) });
}

/** Saves everything there is, as it is kept. */
export function saveAll(handed: Handed): void {
  saveZip(handed.number, filesOf(handed));
}

/** Every file of a handing-over, by name. */
export function filesOf({ files, pdf }: Handed): Record<string, Uint8Array<ArrayBuffer>> {
  const texts = Object.entries(files).map(([name, text]) => [name, bytesOf(text)] as const);
  return {
    ...Object.fromEntries(texts),
    ...(pdf === undefined ? {} : { 'sheet.pdf': fromBase64(pdf) }),
  };
}

function saveZip(stem: string, files: Record<string, Uint8Array<ArrayBuffer>>): void {
  const zip = zipSync(files, { level: 6 });
  downloadFile(new File([zip], fileName(stem, 'zip'), { type: 'application/zip' }));
}

function bytesOf(text: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(text);
}

function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}
