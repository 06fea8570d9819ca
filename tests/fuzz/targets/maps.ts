import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { ok, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { openMap } from '../../../main/services/map/open-map.ts';
import { pbfFile } from '../../support/pbf-file.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { mutateJson } from '../make/mutate-json.ts';
import { osmXml, overpassAnswer, smallMap } from '../make/osm.ts';
import type { Random } from '../make/random.ts';
import { askedTwice, faultInSentences } from '../promises.ts';
import type { Target } from '../target.ts';

const encoder = new TextEncoder();

export const pbf = mapTarget('PBF', 4, (random) => {
  const map = smallMap(random);
  const dense = random.chance(0.7);
  // uncompressed, so that a change reaches what is inside
  const compression = random.pick(['raw', 'raw', 'raw', 'zlib', 'lzma'] as const);
  return mutateBytes(
    pbfFile([{ nodes: map.nodes }, { ways: map.ways }, { relations: map.relations }], { dense, compression }),
    random,
  );
});

export const xml = mapTarget('OSM XML', 5, (random) => {
  const made = encoder.encode(osmXml(smallMap(random), random));
  return random.chance(0.8) ? mutateBytes(made, random) : made;
});

export const overpass = mapTarget('Overpass JSON', 5, (random) => {
  const made = overpassAnswer(smallMap(random));
  if (random.chance(0.5)) return encoder.encode(JSON.stringify(mutateJson(made, random)));
  return mutateBytes(encoder.encode(JSON.stringify(made)), random);
});

export const packed = mapTarget('gzipped map', 1, (random) => {
  const map = smallMap(random);
  const text = random.chance(0.5) ? osmXml(map, random) : JSON.stringify(overpassAnswer(map));
  const whole = random.chance(0.1) ? text.repeat(200) : text;
  const made = Uint8Array.from(gzipSync(whole));
  return random.chance(0.8) ? mutateBytes(made, random) : made;
});

function mapTarget(name: string, weight: number, make: (random: Random) => Uint8Array): Target {
  const folder = mkdtempSync(join(tmpdir(), 'lanegauge-fuzz-'));
  const path = join(folder, 'map');
  return {
    name,
    weight,
    make,
    check(input) {
      writeFileSync(path, input);
      return askedTwice(() => read(path), faultInRoads);
    },
  };
}

async function read(path: string): Promise<Result<Omit<Roads, 'index'>>> {
  const opened = await openMap([path], undefined);
  return opened.ok ? ok(dataOf(opened.value)) : opened;
}

/** The map without its index, whose functions are other ones each time. */
export function dataOf({ index: _, ...data }: Roads): Omit<Roads, 'index'> {
  return data;
}

/** Every road names nodes that are there, every place lies on Earth. */
export function faultInRoads({ nodes, ways, notes, incomplete }: Omit<Roads, 'index'>): string | undefined {
  for (let node = 0; node < nodes.count; node++)
    if (!(Math.abs(nodes.lat[node]!) <= 90 && Math.abs(nodes.lon[node]!) <= 180))
      return 'a node that is not on Earth';
  for (let at = 0; at < ways.start[ways.count]!; at++)
    if (!(ways.refs[at]! < nodes.count)) return 'a road over a node that is not there';
  return faultInSentences([...notes, ...(incomplete ?? [])]);
}
