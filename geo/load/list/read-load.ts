import type { z } from 'zod';
import { type DocumentWords, readDocument } from '../../document/read-document.ts';
import { sayFault } from '../../document/say-fault.ts';
import type { Result } from '../../result.ts';
import { quote } from '../../units/text.ts';
import { ITEMS_MAX } from './bounds.ts';
import { type LoadList, loadListSchema } from './load-list.ts';

const WORDS: DocumentWords = { code: 'load', kind: 'load list', short: 'list', sayFault: sayLoadFault };

/**
 * Reads a load list from the text of its file.
 * @param text JSON of format `lanegauge.load`, version 1
 * @param file the file's name, for the message
 * @returns the list, or one sentence naming every item that is wrong by its number and name
 */
export function readLoad(text: string, file: string): Result<LoadList> {
  return readDocument(text, file, loadListSchema, WORDS);
}

function sayLoadFault(issue: z.core.$ZodIssue, data: unknown): string {
  const [list, index, ...path] = issue.path;
  if (list !== 'items' || typeof index !== 'number') {
    if (list === 'items' && issue.code === 'too_big')
      return `more than ${ITEMS_MAX} items; put small things together`;
    return sayFault(issue, data, { whole: 'the list', kind: 'load list' });
  }
  const item = itemAt(data, index);
  const name = typeof item === 'object' && item !== null && 'name' in item ? item.name : undefined;
  const which = `item ${index + 1}${typeof name === 'string' && name.trim() !== '' ? ` ${quote(name)}` : ''}`;
  if (path[0] === 'name' && issue.code === 'invalid_format') return `${which} has no name`;
  return `${which}: ${sayFault({ ...issue, path } as z.core.$ZodIssue, item, { whole: 'it', kind: 'load item' })}`;
}

function itemAt(data: unknown, index: number): unknown {
  if (typeof data !== 'object' || data === null || !('items' in data) || !Array.isArray(data.items))
    return undefined;
  return data.items[index];
}
