import { featureCollection, point } from '@turf/turf';
import type { FeatureCollection, Point } from 'geojson';
import { z } from 'zod';
import { sayFault } from '../document/say-fault.ts';
import { given } from '../given.ts';
import { fail, ok, type Result } from '../result.ts';
import { clip, countedInWords, quote } from '../units/text.ts';
import { type LocalNote, type NoteFields, noteFieldsSchema } from './note.ts';

// Local notes as GeoJSON (RFC 7946), to give to another firm: a Point for each, its properties the note without its place.

const FORMAT = 'lanegauge.note';
/** A hundredth of a metre: finer than any place is known. */
const DECIMALS = 7;

/** The notes, ready to be written. */
export function notesGeoJson(notes: readonly LocalNote[]): FeatureCollection<Point> {
  return featureCollection(
    notes.map(({ id, at, ...fields }) =>
      point([round(at.lon), round(at.lat)], { format: FORMAT, ...fields }, { id }),
    ),
  );
}

function round(degrees: number): number {
  return Number(degrees.toFixed(DECIMALS));
}

/** A note as it was read; with the id that it had where it was written. */
export interface NoteRead {
  readonly id?: string;
  readonly fields: NoteFields;
}

interface NotesRead {
  readonly notes: readonly NoteRead[];
  /** sentences on the features that are no notes, or damaged ones: they are left alone */
  readonly left: readonly string[];
}

const collectionSchema = z.looseObject({
  type: z.literal('FeatureCollection'),
  features: z.array(z.unknown()),
});
const featureSchema = z.looseObject({
  type: z.literal('Feature'),
  id: z.string().min(1).max(200).optional().catch(undefined),
  geometry: z.looseObject({
    type: z.literal('Point'),
    coordinates: z.array(z.number()).min(2).max(3),
  }),
  properties: z.looseObject({ format: z.literal(FORMAT) }),
});

/** More of one sort are counted, not told one by one. */
const TOLD_MOST = 8;

/**
 * Reads notes from GeoJSON. Features of others and damaged ones are named and left.
 * @param text one feature or a collection; a byte order mark may lead
 * @param file the file's name, for the message
 */
export function readNotesGeoJson(text: string, file: string): Result<NotesRead> {
  let data: unknown;
  try {
    data = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
  } catch {
    return fail(
      'notes-not-json',
      `${clip(file)} is not JSON, or is cut off. Ask for it once more, and open that.`,
    );
  }
  const features = featuresOf(data);
  if (features === undefined)
    return fail(
      'notes-not-geojson',
      `${clip(file)} holds no GeoJSON features. Choose a file of notes written by this program.`,
    );
  const notes: NoteRead[] = [];
  const damaged: string[] = [];
  let foreign = 0;
  for (const [i, feature] of features.entries()) {
    const read = readFeature(feature);
    if (read === 'foreign') foreign++;
    else if ('fields' in read) notes.push(read);
    else damaged.push(`Note ${i + 1} of ${clip(file)} is left out: ${read.fault}.`);
  }
  return ok({ notes, left: [...toldOf(damaged), ...sayForeign(foreign, file)] });
}

function featuresOf(data: unknown): readonly unknown[] | undefined {
  const collection = collectionSchema.safeParse(data);
  if (collection.success) return collection.data.features;
  return z.looseObject({ type: z.literal('Feature') }).safeParse(data).success ? [data] : undefined;
}

function readFeature(feature: unknown): NoteRead | 'foreign' | { readonly fault: string } {
  const ours = z
    .looseObject({ properties: z.looseObject({ format: z.literal(FORMAT) }) })
    .safeParse(feature).success;
  if (!ours) return 'foreign';
  const parsed = featureSchema.safeParse(feature);
  if (!parsed.success) return { fault: 'its place is no point' };
  const { id, geometry, properties } = parsed.data;
  const { format: _, ...said } = properties;
  const [lon, lat] = geometry.coordinates;
  const fields = { ...said, at: { lat, lon } };
  const note = noteFieldsSchema.safeParse(fields);
  if (note.success) return { ...given({ id }), fields: note.data };
  const [issue] = note.error.issues;
  const about = { whole: 'it', kind: 'note' };
  return { fault: issue === undefined ? 'it cannot be read' : sayFault(issue, fields, about) };
}

function toldOf(damaged: readonly string[]): string[] {
  if (damaged.length <= TOLD_MOST) return [...damaged];
  return [...damaged.slice(0, TOLD_MOST), `${damaged.length - TOLD_MOST} more notes are left out as well.`];
}

function sayForeign(count: number, file: string): string[] {
  if (count === 0) return [];
  const what = countedInWords(count, 'feature');
  return [
    `${what} of ${quote(file)} ${count === 1 ? 'is' : 'are'} no notes of this program, and left alone.`,
  ];
}
