import { clip } from '../../units/text.ts';
import { type Element, readElement } from './element.ts';

/** What a server answered to one question, told by its contents: the status is sent before the work is done. */
export type Reading =
  | { readonly kind: 'answer'; readonly answer: LineAnswer }
  /** ended early, and what is there is a part; `said` is the server's reason */
  | { readonly kind: 'remark'; readonly said: string }
  /** an error that the server told before the answer began, on a page of its own */
  | { readonly kind: 'error'; readonly said: string }
  /** another page of the web: someone stands before the server */
  | { readonly kind: 'page' }
  | { readonly kind: 'empty' }
  /** JSON that breaks off */
  | { readonly kind: 'cut' }
  /** neither JSON nor a page */
  | { readonly kind: 'garbled' }
  /** sound JSON of another kind */
  | { readonly kind: 'foreign' };

export interface LineAnswer {
  readonly elements: readonly Element[];
  /** ISO date of the data, UTC; undefined where the server does not tell, or tells nonsense */
  readonly baseDate?: string;
  /** elements that cannot be read */
  readonly unfit: number;
}

/** How an Overpass server marks what went wrong: on a page for people, or in an answer as XML. */
const ERROR = /(?:Error<\/strong>\s*:|<remark>)\s*([^<]+)/u;
/** The longest page that is looked through for it. */
const PAGE_CHARACTERS = 20_000;
const ISO_DATE = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2})?Z$/u;

/** Reads an answer to one question. */
export function readAnswer(text: string): Reading {
  const begin = text.trimStart().slice(0, 1);
  if (begin === '') return { kind: 'empty' };
  if (begin === '<') return readPage(text.slice(0, PAGE_CHARACTERS));
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return { kind: begin === '{' || begin === '[' ? 'cut' : 'garbled' };
  }
  if (!hasElements(json)) return { kind: 'foreign' };
  if (typeof json.remark === 'string') return { kind: 'remark', said: clip(json.remark, 200) };
  const elements: Element[] = [];
  let unfit = 0;
  for (const raw of json.elements) {
    const element = readElement(raw);
    if (element === 'unfit') unfit++;
    else if (element !== 'beside') elements.push(element);
  }
  const base = json.osm3s?.timestamp_osm_base;
  const dated = typeof base === 'string' && ISO_DATE.test(base);
  return { kind: 'answer', answer: { elements, unfit, ...(dated ? { baseDate: base } : {}) } };
}

function readPage(page: string): Reading {
  const said = ERROR.exec(page)?.[1];
  if (said !== undefined) return { kind: 'error', said: clip(said.replaceAll(/\s+/gu, ' ').trim(), 200) };
  return { kind: /<osm\b/u.test(page) ? 'foreign' : 'page' };
}

interface RawAnswer {
  readonly elements: readonly unknown[];
  readonly remark?: unknown;
  readonly osm3s?: { readonly timestamp_osm_base?: unknown } | null;
}

function hasElements(json: unknown): json is RawAnswer {
  return typeof json === 'object' && json !== null && 'elements' in json && Array.isArray(json.elements);
}
