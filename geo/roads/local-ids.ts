import type { MapSink, Member, NodeBatch } from './sink.ts';

/** Far beyond any id that editors give to what they have not yet uploaded. */
const ROOM_PER_FILE = 2 ** 44;

/**
 * Ids below zero name new things of one file alone: -1 of one file is not -1 of another.
 * @param file place of the file in the list; the first keeps its ids as they are
 */
export function withLocalIds(sink: MapSink, file: number): MapSink {
  if (file === 0) return sink;
  const shift = file * ROOM_PER_FILE;
  const own = (id: number): number => (id < 0 ? id - shift : id);
  const ownAll = (ids: Float64Array, count: number): Float64Array => {
    for (let i = 0; i < count; i++) if (ids[i]! < 0) return ids.slice(0, count).map(own);
    return ids;
  };
  const { nodes, way, relation } = sink;
  return {
    ...(nodes && {
      nodes: (batch: NodeBatch) => {
        const id = ownAll(batch.id, batch.count);
        nodes(id === batch.id ? batch : { ...batch, id });
      },
    }),
    ...(way && {
      way: (raw) => {
        const refs = ownAll(raw.refs, raw.count);
        way(refs === raw.refs && raw.id >= 0 ? raw : { ...raw, id: own(raw.id), refs });
      },
    }),
    ...(relation && {
      relation: (raw) =>
        relation({
          ...raw,
          id: own(raw.id),
          members: () => raw.members().map((member): Member => ({ ...member, id: own(member.id) })),
        }),
    }),
  };
}
