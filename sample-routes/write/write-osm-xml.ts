import { gzipSync } from 'node:zlib';
import { boundsOf, type District, SURVEYED_S } from '../draw/elements.ts';
import type { Tags } from '../plan/words.ts';

/** The district as OSM XML 0.6. */
function writeOsmXml(district: District): string {
  const box = boundsOf(district.nodes);
  const made = new Date(SURVEYED_S * 1000).toISOString().replace('.000', '');
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<osm version="0.6" generator="lanegauge sample-routes" timestamp="${made}">`,
    `<bounds minlat="${box.south}" minlon="${box.west}" maxlat="${box.north}" maxlon="${box.east}"/>`,
    ...district.nodes.map((node) =>
      element('node', `id="${node.id}" lat="${node.lat}" lon="${node.lon}"`, tagLines(node.tags)),
    ),
    ...district.ways.map((way) =>
      element('way', `id="${way.id}"`, [
        ...way.refs.map((ref) => `<nd ref="${ref}"/>`),
        ...tagLines(way.tags),
      ]),
    ),
    ...district.relations.map((relation) =>
      element('relation', `id="${relation.id}"`, [
        ...relation.members.map(
          (m) => `<member type="${m.type}" ref="${m.ref}" role="${escapeXml(m.role)}"/>`,
        ),
        ...tagLines(relation.tags),
      ]),
    ),
    '</osm>',
    '',
  ].join('\n');
}

/** Compressed without the clock or a file name in it, so that the same map gives the same bytes. */
export function writeOsmGz(district: District): Uint8Array {
  return gzipSync(writeOsmXml(district), { level: 9 });
}

function element(name: string, attributes: string, content: readonly string[]): string {
  if (content.length === 0) return `<${name} ${attributes}/>`;
  return [`<${name} ${attributes}>`, ...content, `</${name}>`].join('\n');
}

function tagLines(tags: Tags): string[] {
  return Object.entries(tags).map(([key, value]) => `<tag k="${escapeXml(key)}" v="${escapeXml(value)}"/>`);
}

export function escapeXml(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
