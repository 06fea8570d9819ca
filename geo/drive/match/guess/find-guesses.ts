import { append } from '../../../lists.ts';
import type { Span } from '../../drive.ts';
import type { BestChain } from '../best-chain.ts';
import type { Matching } from '../lattice.ts';
import type { Path } from '../trace-paths.ts';
import { type Explored, exploreGap } from './explore-gap.ts';
import { fillAfter } from './fill.ts';
import { keepsToLine } from './keeps-to-line.ts';
import { nearlyM, othersBetween, othersThrough } from './other-ways.ts';

/** A way round so much longer than the straight line may stand for a road the map does not have. */
const LONG_WAY_ROUND = 1.6;
const LONG_WAY_M = 100;
/** The way through the gap beside may be so much dearer before ways through both are no longer looked for. */
const MOST_BESIDE_M = 3000;

/** Spans of a path, in metres along it, filled in between far positions where another way is nearly as quick. */
export function findGuesses(matching: Matching, chain: BestChain, path: Path): Span[] {
  const spans: Span[] = [];
  let before: Explored | undefined;
  for (let i = path.first; i < path.last; i++) {
    matching.settings.lookUp?.();
    const found = guessesAfter(matching, chain, path, i);
    append(spans, found.spans);
    if (before !== undefined && found.explored !== undefined)
      append(spans, othersThrough(matching, chain, i, [before, found.explored]));
    before = found.explored;
  }
  return spans;
}

interface Found {
  readonly spans: readonly Span[];
  readonly explored?: Explored;
}

/** What is guessed between position i and the next. */
function guessesAfter(matching: Matching, chain: BestChain, path: Path, i: number): Found {
  const { lattice, settings } = matching;
  if (lattice.gapM[i]! <= settings.sparseM) return { spans: [] };
  const fill = fillAfter(matching, chain, i);
  if (settings.drawn && (fill === undefined || keepsToLine(matching, fill))) return { spans: [] };
  const startM = path.positionM[i - path.first]!;
  const endM = path.positionM[i - path.first + 1]!;
  if (endM - startM > LONG_WAY_ROUND * lattice.gapM[i]! + LONG_WAY_M)
    return { spans: [{ fromM: startM, toM: endM }] };
  if (fill === undefined) return { spans: [] };
  const explored = exploreGap(matching, fill, {
    startM,
    open: { start: i === path.first, end: i + 1 === path.last },
    limitM: (costM) => costM + nearlyM(settings, costM) + besideM(matching, path, i),
  });
  return { spans: othersBetween(matching, explored), explored };
}

/** What a way through this gap and the one before or after may cost more here, as it costs less there. */
function besideM({ lattice }: Matching, path: Path, i: number): number {
  const longestM = Math.max(
    i > path.first ? lattice.gapM[i - 1]! : 0,
    i + 1 < path.last ? lattice.gapM[i + 1]! : 0,
  );
  return Math.min(MOST_BESIDE_M, longestM);
}
