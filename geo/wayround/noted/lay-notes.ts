import type { HeldPart } from '../../notes/held-road.ts';
import type { LocalNote } from '../../notes/note.ts';
import { holdFigures } from '../../rules/noted/hold-figure.ts';
import { isHeaded, placedOn } from '../../rules/noted/notes-on-drive.ts';
import { drivenWays } from '../../rules/places.ts';
import { runOf } from '../../rules/run.ts';
import { askedAlone } from '../price/asked-alone.ts';
import { priceS } from '../price/judged.ts';
import type { RoadCosts } from '../price/road-costs.ts';
import type { Overlay } from '../search/overlay.ts';

/**
 * Lays what the firm knows of roads over their prices: what a figure of its own bars is absent, what it leaves tight costs.
 * What it answers (a bridge without a height) comes from the check, as the bridge does.
 * @param spared edges that a place lies on, where the figure may stand beyond it: left to the check of the trip
 */
export function layNotes(
  overlay: Overlay,
  {
    costs,
    notes,
    spared = new Set(),
  }: {
    readonly costs: RoadCosts;
    readonly notes: readonly LocalNote[];
    readonly spared?: ReadonlySet<number>;
  },
): void {
  for (const note of notes) {
    const parts = placedOn(costs.roads, note);
    if ('why' in parts) continue;
    for (const part of parts)
      for (const directed of edgesOf(part, note, costs)) {
        const tenths = tenthsOf(note, directed, costs);
        if (tenths > 0 && !spared.has(directed >> 1))
          overlay.edges.set(directed, Math.max(tenths, overlay.edges.get(directed) ?? 0));
      }
  }
}

/** Less than this is rounding. Metres. */
const LEAST_M = 0.01;

/** The directed edges that run over a held part of a way, in the directions that the note holds for. */
function edgesOf({ way, fromM, toM }: HeldPart, note: LocalNote, { graph, roads }: RoadCosts): number[] {
  const { alongM, edgeOfSegment, firstRef, lastRef } = graph;
  const first = edgeOfSegment[roads.ways.start[way]!]!;
  const last = edgeOfSegment[roads.ways.start[way + 1]! - 2]!;
  const edges: number[] = [];
  for (let edge = first; edge <= last; edge++) {
    const beginM = Math.max(fromM, alongM[firstRef[edge]!]!);
    const endM = Math.min(toM, alongM[lastRef[edge]!]!);
    if (endM - beginM < LEAST_M) continue;
    for (const forward of [true, false])
      if (isHeaded(note, roads, { way, forward }, (beginM + endM) / 2))
        edges.push(2 * edge + (forward ? 0 : 1));
  }
  return edges;
}

/** What the figures of a note count on an edge, Infinity where one bars. */
function tenthsOf(note: LocalNote, directed: number, { graph, judge, roads }: RoadCosts): number {
  const way = graph.way[directed >> 1]!;
  const at = note.at;
  const input = askedAlone(
    {
      wayTags: judge.tagsOf(way),
      kind: roads.ways.kind[way]!,
      forward: directed % 2 === 0,
      junction: false,
      at,
      country: judge.countryAt(at),
      reach: 'through',
      moment: undefined,
      onClock: () => {},
    },
    judge.asker,
  );
  const [place] = drivenWays(input.drive, input.roads);
  if (place === undefined) return 0;
  return holdFigures(input, [{ note, run: runOf(place) }]).reduce((most, { figure, judged }) => {
    if (judged === undefined) return most;
    if (judged.level === 'barred') return Number.POSITIVE_INFINITY;
    return Math.max(most, 10 * priceS({ subject: figure.subject, level: judged.level }));
  }, 0);
}
