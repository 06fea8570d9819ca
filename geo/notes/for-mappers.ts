import { mappedOn } from '../roads/mapped-on.ts';
import type { Roads } from '../roads/roads.ts';
import { csvText } from '../units/csv.ts';
import { type MappedFigure, mappedThere } from './mapped-there.ts';
import type { LocalNote } from './note.ts';
import { type OnWay, placeNote } from './place-note.ts';
import { seenOn } from './same-road.ts';
import { figuresOf, type NotedFigure } from './say-note.ts';

/** How a measured figure stands to the map, in the order in which they are worth a mapper's time. */
const STANDS = ['mapped lower', 'mapped higher', 'not mapped', 'road not found'] as const;

/** One measured figure that the open map lacks, or has otherwise. */
export interface ForMappers {
  readonly stands: (typeof STANDS)[number];
  readonly note: LocalNote;
  readonly figure: NotedFigure;
  /** `Mill Lane (B 12)` as mapped now, or as it was when the note was made */
  readonly road: string;
  /** OSM id of the way now */
  readonly way?: number;
  readonly mapped?: MappedFigure;
}

/** Closer than this is the same figure: signs are rounded. */
const SAME = { m: 0.05, kg: 50 };

/**
 * What the firm measured and the map does not say: first what the map holds too low, which bars a road for nothing, then
 * what it holds too high, then what it lacks. Figures that agree are left out, and so are words.
 */
export function forMappers(notes: readonly LocalNote[], roads: Roads): ForMappers[] {
  const all = notes.flatMap((note) => {
    const placed = placeNote(note, roads);
    return figuresOf(note).flatMap((figure): ForMappers | [] =>
      placed.ok
        ? (compared(note, figure, placed.on, roads) ?? [])
        : { stands: 'road not found', note, figure, road: nameOf(note.road ?? {}) },
    );
  });
  return all.sort((a, b) => STANDS.indexOf(a.stands) - STANDS.indexOf(b.stands));
}

function compared(
  note: LocalNote,
  figure: NotedFigure,
  on: readonly [OnWay, ...OnWay[]],
  roads: Roads,
): ForMappers | undefined {
  const [{ way }] = on;
  const here = {
    note,
    figure,
    road: nameOf(seenOn(mappedOn(roads, way))),
    way: roads.ways.id[way]!,
  };
  const mapped = mappedThere(on, figure.subject, roads);
  if (mapped === undefined) return { ...here, stands: 'not mapped' };
  const over = mapped.value - figure.value;
  if (Math.abs(over) <= (figure.subject === 'mass' ? SAME.kg : SAME.m)) return undefined;
  return { ...here, stands: over < 0 ? 'mapped lower' : 'mapped higher', mapped };
}

function nameOf({ name, ref, class: of }: NonNullable<LocalNote['road']>): string {
  if (name !== undefined && ref !== undefined) return `${name} (${ref})`;
  return name ?? ref ?? (of === undefined ? 'a road' : `a road without a name (${of})`);
}

const HEADER = [
  'map',
  'about',
  'measured',
  'unit',
  'mapped',
  'road',
  'way',
  'latitude',
  'longitude',
  'seen',
  'by',
  'note',
];

/** The list as a table. */
export function mappersCsv(list: readonly ForMappers[]): string {
  const rows = list.map(({ stands, note, figure, road, way, mapped }) => [
    stands,
    figure.subject,
    figure.value,
    figure.subject === 'mass' ? 'kg' : 'm',
    mapped && `${mapped.key}=${mapped.text}`,
    road,
    way,
    Number(note.at.lat.toFixed(6)),
    Number(note.at.lon.toFixed(6)),
    note.seen,
    note.by,
    note.say,
  ]);
  return csvText([HEADER, ...rows]);
}
