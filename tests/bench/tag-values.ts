/*
 * Reads a table of judged tag values (columns tag, value, count, meaning, note, source; tab-separated, first row the
 * names) and prints, per family of tags, how many are read with the meaning given, and every one that is not.
 * Run: LANEGAUGE_TAG_VALUES=table.tsv node .build/tests/bench/tag-values.js
 */
import { readFileSync } from 'node:fs';
import type { ConditionContext } from '../../geo/tags/conditional/context.ts';
import { evaluateConditional } from '../../geo/tags/conditional/evaluate.ts';
import { parseConditional } from '../../geo/tags/conditional/parse.ts';
import { laneValues } from '../../geo/tags/lanes.ts';
import type { Figure } from '../../geo/units/believed.ts';
import { readLength } from '../../geo/units/read-length.ts';
import { readMass } from '../../geo/units/read-mass.ts';
import type { Reading } from '../../geo/units/reading.ts';

interface Row {
  readonly tag: string;
  readonly value: string;
  readonly meaning: string;
  readonly note: string;
}

/** The table's reference vehicle; neither the time nor the errand is known. */
const REFERENCE: ConditionContext = {
  vehicle: { weight: 3500, weightrating: 3500, height: 3.2, width: 2.35, length: 7.5, axles: 2 },
};

/** A conditional's meaning in the table's words, the cause left out. */
function meaningOfConditional(text: string): string {
  const parsed = parseConditional(text);
  if (!parsed.ok) return 'unreadable';
  const judged = evaluateConditional(parsed.value, REFERENCE);
  if (judged.settled) return judged.value === undefined ? 'not applicable' : `applies: ${judged.value}`;
  const values = judged.possible.filter((value) => value !== undefined);
  return `depends -> ${[...new Set(values)].sort().join(' or ')}`;
}

function expectedOfConditional({ meaning }: Row): string {
  if (meaning === 'invalid' || meaning === 'unknown') return 'unreadable';
  if (meaning.startsWith('not applicable')) return 'not applicable';
  const depends = /^depends on .*? -> (.*)$/.exec(meaning)?.[1];
  return depends === undefined ? meaning : `depends -> ${depends.split(' or ').sort().join(' or ')}`;
}

const round = (value: number): string => String(Math.round(value * 1000) / 1000);

function sayReading(reading: Reading, unit: 'm' | 't'): string {
  if (reading.kind === 'value')
    return `${round(unit === 't' ? reading.value / 1000 : reading.value)} ${unit}`;
  return reading.kind === 'unreadable' ? 'invalid' : reading.kind;
}

function readerOf(family: string): ((text: string) => string) | undefined {
  const of = FIGURE_OF[family];
  if (of !== undefined)
    return (text) =>
      MASSES.has(of) ? sayReading(readMass(text, of), 't') : sayReading(readLength(text, of), 'm');
  return family === 'height' || family === 'length' ? (text) => sayReading(readLength(text), 'm') : undefined;
}

/** What each family of tags is held to. */
const FIGURE_OF: Readonly<Record<string, Figure>> = {
  maxheight: 'height',
  maxwidth: 'width',
  maxlength: 'length',
  width: 'carriageway',
  est_width: 'carriageway',
  maxweight: 'mass',
  maxaxleload: 'axle',
  maxbogieload: 'bogie',
};
const MASSES: ReadonlySet<Figure> = new Set(['mass', 'axle', 'bogie']);

/** The first figure or word of the table's own meaning; its flags and alternatives are for people. */
function expectedOfFigure({ meaning, note }: Row): string {
  if (note.includes('implausible')) return 'not believed';
  const figure = /^([\d.]+) (m|t|metres|tonnes)\b/.exec(meaning);
  return figure === null ? meaning : `${round(Number(figure[1]))} ${figure[2]?.[0] ?? ''}`;
}

function compare(row: Row): { ours: string; theirs: string } | undefined {
  if (row.tag.includes('conditional'))
    return { ours: meaningOfConditional(row.value), theirs: expectedOfConditional(row) };
  const family = familyOf(row.tag);
  const read = readerOf(family);
  // what is for boats is no limit of a road, and held to nothing
  if (read === undefined || row.note.includes('seamark')) return undefined;
  if (row.tag.includes(':lanes')) {
    const ours = laneValues(row.value, 'main key').map((value) =>
      value === 'main key' ? value : read(value ?? ''),
    );
    return { ours: ours.join('|'), theirs: row.meaning };
  }
  return /:(mlc|signed|source|except)|_/.test(row.tag) && family !== 'est_width'
    ? undefined
    : { ours: read(row.value), theirs: expectedOfFigure(row) };
}

function familyOf(tag: string): string {
  return tag.includes('conditional') ? ':conditional' : (tag.split(':')[0] ?? tag);
}

const path = process.env['LANEGAUGE_TAG_VALUES'];
if (path === undefined) {
  process.stderr.write('Set LANEGAUGE_TAG_VALUES to the table of judged values.\n');
  process.exit(2);
}
const rows = readFileSync(path, 'utf8')
  .split('\n')
  .slice(1)
  .filter((line) => line !== '')
  .map((line): Row => {
    const [tag = '', value = '', , meaning = '', note = ''] = line.split('\t');
    return { tag, value, meaning, note };
  });

const tally = new Map<string, { agreed: number; all: number; skipped: number }>();
for (const row of rows) {
  const family = familyOf(row.tag);
  const count = tally.get(family) ?? { agreed: 0, all: 0, skipped: 0 };
  tally.set(family, count);
  const compared = compare(row);
  if (compared === undefined) count.skipped++;
  else {
    count.all++;
    if (compared.ours === compared.theirs) count.agreed++;
    else
      process.stdout.write(
        `${row.tag}=${row.value}\n  ours ${compared.ours} | table ${row.meaning} (${row.note})\n`,
      );
  }
}
for (const [family, { agreed, all, skipped }] of [...tally].sort((a, b) => b[1].all - a[1].all))
  process.stdout.write(`${family.padEnd(20)} ${agreed} of ${all} agree, ${skipped} without a reader here\n`);
