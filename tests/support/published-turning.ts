import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

export const FOOT_M = 0.3048;

/** A published figure of turning or swing, with its source and whether its text was seen. */
export interface PublishedTurning {
  readonly id: string;
  readonly kind: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly expected_ft?: number;
  readonly tolerance_ft?: number;
  readonly source: string;
}

/** The published figures of one kind. */
export function publishedOf(kind: string): readonly PublishedTurning[] {
  const file = resolve(import.meta.dirname, '../outside/turning-published.json');
  const { cases } = JSON.parse(readFileSync(file, 'utf8')) as { readonly cases: readonly PublishedTurning[] };
  return cases.filter((each) => each.kind === kind);
}

export function figureOf(value: number | undefined): number {
  return value ?? Number.NaN;
}
