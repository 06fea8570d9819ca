import { z } from 'zod';
import { tellOwnFile } from '../document/own-file.ts';
import { askMeant } from '../units/slips.ts';
import { clip, quote } from '../units/text.ts';
import { MOST_PARTS } from './most-parts.ts';
import { NodeBatcher } from './node-batcher.ts';
import { Refusal } from './refusal.ts';
import type { FileFacts, MapSink } from './sink.ts';
import { isSoundText } from './sound-text.ts';

const id = z.int();
const text = z.string().refine(isSoundText);
const tags = z.record(text, text).optional();
const lat = z.number().min(-90).max(90);
const lon = z.number().min(-180).max(180);

/** What a server may tell besides (`out meta`, `out center`, `out bb`). */
const beside = {
  timestamp: z.unknown().optional(),
  version: z.unknown().optional(),
  changeset: z.unknown().optional(),
  user: z.unknown().optional(),
  uid: z.unknown().optional(),
  visible: z.unknown().optional(),
  bounds: z.unknown().optional(),
  center: z.unknown().optional(),
};

// strict: a misspelt field would lose what it holds
const nodeSchema = z.strictObject({ type: z.literal('node'), id, lat, lon, tags, ...beside });
const waySchema = z.strictObject({
  type: z.literal('way'),
  id,
  nodes: z.array(id).max(MOST_PARTS),
  // places outside the box asked for are null
  geometry: z.array(z.object({ lat, lon }).nullable()).optional(),
  tags,
  ...beside,
});
const relationSchema = z.strictObject({
  type: z.literal('relation'),
  id,
  members: z
    .array(z.object({ type: z.enum(['node', 'way', 'relation']), ref: id, role: text }))
    .max(MOST_PARTS)
    .default([]),
  tags,
  ...beside,
});
const elementSchema = z.discriminatedUnion('type', [nodeSchema, waySchema, relationSchema]);

const FIELDS = new Set([nodeSchema, waySchema, relationSchema].flatMap(({ shape }) => Object.keys(shape)));

const answerSchema = z.object({
  elements: z.array(z.unknown()),
  remark: z.string().optional(),
  osm3s: z.object({ timestamp_osm_base: z.string().optional() }).optional(),
});

/** Reads an Overpass answer (`out body`, `out geom`). Throws a Refusal. */
export function readOverpassJson(text: string, sink: MapSink): FileFacts {
  const { elements, remark, osm3s } = readAnswer(text);
  const nodes = new NodeBatcher(sink);
  for (const [index, element] of elements.entries()) {
    const parsed = elementSchema.safeParse(element);
    if (!parsed.success) throw badElement(element, index, parsed.error);
    const item = parsed.data;
    if (item.type === 'node') nodes.add(item.id, item.lat, item.lon, item.tags);
    else {
      nodes.flush();
      if (item.type === 'way') giveWay(item, index, sink);
      else
        sink.relation?.({
          id: item.id,
          tags: item.tags ?? {},
          members: () => item.members.map(({ type, ref, role }) => ({ type, id: ref, role })),
        });
    }
  }
  nodes.flush();
  const dataDate = osm3s?.timestamp_osm_base;
  const incomplete = remark === undefined ? [] : [incompleteNote(remark)];
  return {
    notes: incomplete,
    incomplete,
    ...(dataDate ? { dataDate } : {}),
  };
}

/** Whether a file that holds this element could be read. */
export function isReadable(element: unknown): boolean {
  return elementSchema.safeParse(element).success;
}

/** For an answer that its server ended early, in either of its forms. */
export function incompleteNote(remark: string): string {
  const said = clip(remark.replaceAll(/\s+/gu, ' '), 200);
  return `the server's answer is incomplete ("${said}"): roads and limits may be missing. Ask for a smaller area, or use the map of the region (.osm.pbf).`;
}

function readAnswer(text: string): z.infer<typeof answerSchema> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    const reason = clip(error instanceof Error ? error.message : String(error));
    throw new Refusal('map.damaged', `it is not sound JSON (${reason})`);
  }
  const answer = answerSchema.safeParse(json);
  if (answer.success) return answer.data;
  const type = typeof json === 'object' && json !== null && 'type' in json ? json.type : undefined;
  if (type === 'FeatureCollection' || type === 'Feature')
    throw new Refusal(
      'map.geojson',
      'it is GeoJSON, which does not keep how roads join; use .osm.pbf, .osm or Overpass JSON',
    );
  const own = tellOwnFile(json);
  if (own) throw new Refusal('map.own', `it is ${own.what}. ${own.where}`);
  throw new Refusal(
    'map.json',
    'it is JSON, but holds no map. Use .osm.pbf, .osm, .osm.gz or the JSON answer of Overpass',
  );
}

function badElement(element: unknown, index: number, error: z.ZodError): Refusal {
  const [issue] = error.issues;
  const name =
    typeof element === 'object' && element !== null && 'type' in element && 'id' in element
      ? clip(`${element.type} ${element.id}`)
      : 'one without type and id';
  return new Refusal(
    'map.element',
    `element ${index + 1} (${name}) cannot be used: ${issue === undefined ? 'it is no element' : sayFault(issue)}; ask Overpass for "out body" or "out geom"`,
  );
}

function sayFault(issue: z.core.$ZodIssue): string {
  const [field = '', ...deeper] = issue.path.filter((step) => step !== 'type').map(String);
  if (issue.code === 'unrecognized_keys') {
    const [key = ''] = issue.keys;
    return `its field ${quote(key)} is none that Overpass writes${askMeant(key, FIELDS)}`;
  }
  if (field === '') return 'its type is none of node, way and relation';
  const named = clip([field, ...deeper].join('.'));
  if (issue.code === 'invalid_key' || issue.code === 'custom')
    return `its ${named} holds control characters or broken letters`;
  if (issue.code === 'too_big' && issue.origin === 'array')
    return `its ${named} are more than ${String(issue.maximum)}`;
  return `its ${named} is missing or wrong`;
}

function giveWay(way: z.infer<typeof waySchema>, index: number, sink: MapSink): void {
  const { geometry, nodes } = way;
  if (geometry && geometry.length !== nodes.length)
    throw new Refusal(
      'map.element',
      `element ${index + 1} (way ${way.id}) has ${nodes.length} nodes and ${geometry.length} places; ask again`,
    );
  const wayTags = way.tags ?? {};
  sink.way?.({
    id: way.id,
    refs: Float64Array.from(nodes),
    count: nodes.length,
    lat: geometry && Float64Array.from(geometry, (place) => place?.lat ?? Number.NaN),
    lon: geometry && Float64Array.from(geometry, (place) => place?.lon ?? Number.NaN),
    hasKey: (fits) => Object.keys(wayTags).some(fits),
    tags: () => wayTags,
  });
}
