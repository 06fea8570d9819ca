import { SaxesParser } from 'saxes';
import { quote } from '../units/text.ts';
import { NodeBatcher } from './node-batcher.ts';
import { incompleteNote } from './read-json.ts';
import { Refusal } from './refusal.ts';
import type { FileFacts, MapSink } from './sink.ts';
import { XmlElements } from './xml-elements.ts';

/** OSM XML is three deep; far deeper is an attack, and each level costs memory. */
const MAX_DEPTH = 50;
/** More text than this without an element ending is no map. */
const MAX_SILENCE = 32 * 1024 * 1024;

/** Takes an OSM XML document piece by piece. `write` and `finish` throw a Refusal that names the line. */
export interface XmlMapReader {
  write(text: string): void;
  /** The document is over; refuses one that was cut. */
  finish(): FileFacts;
  /** the line that was read last */
  line(): number;
}

/** A reader that hands each element to the sink as it ends. */
export function readMapXml(sink: MapSink): XmlMapReader {
  const parser = new SaxesParser({ xmlns: false });
  const batcher = new NodeBatcher(sink);
  const refuse = (code: string, message: string): never => {
    throw new Refusal(code, `${message} (line ${parser.line})`);
  };
  const elements = new XmlElements(sink, batcher, (message) => refuse('map.damaged', message));
  let depth = 0;
  let silence = 0;
  let child = '';
  let remark: string | undefined;
  let inRemark = false;
  let dataDate: string | undefined;

  parser.on('error', (error) =>
    refuse('map.damaged', `it is not sound XML: ${error.message.replace(/^\d+:\d+: /u, '')}`),
  );
  parser.on('doctype', () =>
    refuse('map.doctype', 'it has a DOCTYPE, which OSM files do not use and which can hide content'),
  );
  parser.on('opentag', ({ name, attributes }) => {
    silence = 0;
    if (++depth > MAX_DEPTH) refuse('map.damaged', `elements nested more than ${MAX_DEPTH} deep`);
    if (depth === 1) checkRoot(name, refuse);
    else if (depth === 2) {
      if (name === 'remark') inRemark = true;
      else if (name === 'meta') dataDate = attributes['osm_base'] ?? dataDate;
      else if (name === 'action') refuse('map.change', CHANGES);
      else elements.open(name, attributes);
    } else if (depth === 3) {
      elements.child(name, attributes);
      child = name;
    } else elements.grandchild(name, child, attributes);
  });
  parser.on('closetag', () => {
    silence = 0;
    depth--;
    if (depth === 1) {
      inRemark = false;
      elements.close();
    }
  });
  const hear = (text: string) => {
    if (depth === 1 && text.trim() !== '')
      refuse('map.damaged', `the text ${quote(text)} stands between its elements`);
    elements.text(text);
    if (inRemark) remark = (remark ?? '') + text.slice(0, 500);
  };
  parser.on('text', hear);
  parser.on('cdata', hear);

  return {
    line: () => parser.line,
    write(text) {
      silence += text.length;
      parser.write(text);
      if (silence > MAX_SILENCE) refuse('map.damaged', 'text without end');
    },
    finish() {
      parser.close();
      batcher.flush();
      const incomplete = remark === undefined ? [] : [incompleteNote(remark)];
      return { notes: [...elements.notes(), ...incomplete], incomplete, ...(dataDate ? { dataDate } : {}) };
    },
  };
}

const CHANGES = 'it lists changes to a map, not a map; use an ordinary extract';

function checkRoot(name: string, refuse: (code: string, message: string) => never): void {
  if (name === 'osm') return;
  if (name === 'osmChange' || name === 'osmAugmentedDiff') refuse('map.change', CHANGES);
  if (name === 'gpx')
    refuse(
      'map.gpx',
      'it is a GPX file: a drive, not a map; give it as the route and a map extract as the map',
    );
  refuse('map.unknown', `it is XML but not OSM: its root is <${name.slice(0, 40)}>`);
}
