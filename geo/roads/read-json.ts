import { z } from 'zod';
import { NodeBatcher } from './node-batcher.ts';
import { Refusal } from './refusal.ts';
import type { FileFacts, MapSink } from './sink.ts';

const id = z.number().refine(Number.isSafeInteger, 'no whole number');
const tags = z.record(z.string(), z.string()).optional();
const lat = z.number().min(-90).max(90);
const lon = z.number().min(-180).max(180);

const nodeSchema = z.object({ type: z.literal('node'), id, lat, lon, tags });
const waySchema = z.object({
  type: z.literal('way'),
  id,
  nodes: z.array(id),
  // places outside the box asked for are null
  geometry: z.array(z.object({ lat, lon }).nullable()).optional(),
  tags,
});
const relationSchema = z.object({
  type: z.literal('relation'),
  id,
  members: z
    .array(z.object({ type: z.enum(['node', 'way', 'relation']), ref: id, role: z.string() }))
    .default([]),
  tags,
});
const elementSchema = z.discriminatedUnion('type', [nodeSchema, waySchema, relationSchema]);

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

/** For an answer that its server ended early, in either of its forms. */
export function incompleteNote(remark: string): string {
  const said = remark.replaceAll(/\s+/gu, ' ').trim().slice(0, 200);
  return `the server's answer is incomplete ("${said}"): roads and limits may be missing. Ask for a smaller area or use a PBF extract.`;
}

function readAnswer(text: string): z.infer<typeof answerSchema> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new Refusal('map.damaged', `it is not sound JSON (${reason.slice(0, 120)})`);
  }
  const answer = answerSchema.safeParse(json);
  if (answer.success) return answer.data;
  const type = typeof json === 'object' && json !== null && 'type' in json ? json.type : undefined;
  if (type === 'FeatureCollection' || type === 'Feature')
    throw new Refusal(
      'map.geojson',
      'it is GeoJSON, which does not keep how roads join; use .osm.pbf, .osm or Overpass JSON',
    );
  throw new Refusal('map.json', 'it is JSON without a list of map elements, so no answer of Overpass');
}

function badElement(element: unknown, index: number, error: z.ZodError): Refusal {
  const [issue] = error.issues;
  const field = issue?.path.filter((step) => step !== 'type').join('.') ?? '';
  const name =
    typeof element === 'object' && element !== null && 'type' in element && 'id' in element
      ? `${element.type} ${element.id}`
      : 'one without type and id';
  return new Refusal(
    'map.element',
    `element ${index + 1} (${name.slice(0, 60)}) cannot be used: ${field === '' ? 'its type is none of node, way and relation' : `its ${field} is missing or wrong`}; ask Overpass for "out body" or "out geom"`,
  );
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
