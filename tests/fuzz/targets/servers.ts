import { isDeepStrictEqual } from 'node:util';
import { holdsRoad } from '../../../geo/fetch/line/holds-road.ts';
import { AnswerMerger } from '../../../geo/fetch/line/merge-answers.ts';
import { planPieces } from '../../../geo/fetch/line/plan-pieces.ts';
import { type LineAnswer, readAnswer } from '../../../geo/fetch/line/read-answer.ts';
import { readStatus } from '../../../geo/fetch/line/read-status.ts';
import { drawThrough } from '../../../geo/fetch/region/drawn-through.ts';
import { planRegions } from '../../../geo/fetch/region/plan-regions.ts';
import { readRegionIndex } from '../../../geo/fetch/region/read-index.ts';
import { refuseOthers } from '../../../main/services/fetch/region/server-files.ts';
import { boxRegion, indexText, lineThrough } from '../../support/map-server/invented-regions.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { mutateJson } from '../make/mutate-json.ts';
import { overpassAnswer, smallMap } from '../make/osm.ts';
import type { Random } from '../make/random.ts';
import { faultInSentence, faultInSentences } from '../promises.ts';
import type { Target } from '../target.ts';

const SERVER = new URL('https://maps.example.org/index.json');
const DRIVE = lineThrough([
  [7, 50],
  [7.002, 50.003],
  [7.4, 50.2],
]);
const REGIONS = [
  boxRegion('vale', [6.9, 49.9, 7.2, 50.3]),
  boxRegion('moor', [7.2, 49.9, 7.6, 50.3]),
  boxRegion('county', [6, 49, 8, 51], { parent: 'land' }),
];
const STATUS =
  'Connected as: 1\nRate limit: 2\nSlot available after: 2027-06-12T09:30:00Z, in 30 seconds.\n2 slots available now.\n';
const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** Sound JSON or bytes of it made unsound. */
function spoilt(sound: unknown, random: Random): Uint8Array {
  return random.chance(0.6)
    ? encoder.encode(JSON.stringify(mutateJson(sound, random)))
    : mutateBytes(encoder.encode(JSON.stringify(sound)), random);
}

/** A list of regions, laid over a drive and planned with. */
export const regionLists: Target = {
  name: 'lists of regions',
  weight: 3,
  make: (random) => spoilt(JSON.parse(indexText(REGIONS)), random),
  check(input) {
    const read = () => readRegionIndex(decoder.decode(input), refuseOthers(SERVER));
    const index = read();
    if (!isDeepStrictEqual(index, read())) return 'asked twice, it answers differently';
    if (!index.ok) return faultInSentence(index.error.message);
    const away = index.value.regions.find(({ url }) => new URL(url).host !== SERVER.host);
    if (away) return `it would ask ${away.url}`;
    const drawn = drawThrough(index.value, DRIVE);
    const steps = planRegions(SERVER.host, drawn, { sizes: new Map([['vale', 1e6]]) });
    return faultInSentences([...index.value.refused, ...steps.map(({ say }) => say)]);
  },
};

/** An interpreter's answer, and what is made of it; or its status page. The first byte says which. */
export const lineAnswers: Target = {
  name: 'answers along a line',
  weight: 3,
  make(random) {
    if (random.chance(0.2)) return Uint8Array.from([1, ...mutateBytes(encoder.encode(STATUS), random)]);
    return Uint8Array.from([0, ...spoilt(overpassAnswer(smallMap(random)), random)]);
  },
  check(input) {
    const text = decoder.decode(input.subarray(1));
    if (input[0] === 1) {
      const { free = 0, waitS = 0 } = readStatus(text);
      return free >= 0 && waitS >= 0 ? undefined : 'a status that cannot be';
    }
    const reading = readAnswer(text);
    if (!isDeepStrictEqual(reading, readAnswer(text))) return 'asked twice, it answers differently';
    if (reading.kind === 'remark') return faultInSentence(`It said "${reading.said}".`);
    return reading.kind === 'answer' ? faultInMerged(reading.answer) : undefined;
  },
};

/** Answers brought together are read as one by whatever reads a map. */
function faultInMerged(answer: LineAnswer): string | undefined {
  for (const piece of PIECES) holdsRoad(answer.elements, piece);
  const merger = new AnswerMerger();
  const text = [merger.begin(answer.baseDate), merger.add(answer), merger.add(answer), merger.end(undefined)];
  const merged = readAnswer(text.join(''));
  if (merged.kind !== 'answer') return `what is brought together is read as ${merged.kind}`;
  const ids = new Set(answer.elements.map(({ type, id }) => `${type}${id}`));
  return merged.answer.elements.length === ids.size ? undefined : 'an element is lost or doubled';
}
const PIECES = planPieces(DRIVE, 1).pieces.slice(0, 3);
