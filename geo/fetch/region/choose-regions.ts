import type { Span } from '../../drive/drive.ts';
import { given } from '../../given.ts';
import { type Coverer, coverAll } from './cover.ts';
import { type Candidate, type DrawnThrough, type Price, priceOf } from './drawn-through.ts';
import { notWorthARegion, runsOf, STRIP_M, spansOf } from './left-out.ts';
import type { Region } from './region.ts';

export interface ChosenRegion {
  readonly region: Region;
  readonly price: Price;
  /** metres of the drive in it */
  readonly coversM: number;
}

/** A part of the drive for which no map is fetched. */
export interface LeftOut {
  /** metres along the line */
  readonly span: Span;
  /** the cheapest region that would hold it; absent where none does */
  readonly within?: { readonly region: Region; readonly price: Price };
}

export interface RegionChoice {
  /** in the order in which the drive meets them */
  readonly regions: readonly ChosenRegion[];
  readonly bytes: number;
  /** whether a size is guessed */
  readonly guessed: boolean;
  /** in driving order */
  readonly leftOut: readonly LeftOut[];
  readonly lengthM: number;
}

export interface Known {
  /** bytes of the regions whose size the server told, by region id */
  readonly sizes: ReadonlyMap<string, number>;
  /** regions whose file could not be had, by id: the others stand in as far as they can */
  readonly without?: ReadonlySet<string>;
  /** regions whose size the server was asked and did not tell, by id */
  readonly untold?: ReadonlySet<string>;
}

/**
 * The set of regions that holds the drive for the fewest bytes, near enough (`coverAll`): three neighbours rather than
 * the continent that holds them. Water and strips between outlines are left out and told, not paid for.
 */
export function chooseRegions(drawn: DrawnThrough, { sizes, without }: Known): RegionChoice {
  const { pieces } = drawn;
  const candidates = drawn.candidates.filter(({ region }) => without?.has(region.id) !== true);
  const prices = candidates.map(({ region }) => priceOf(region, sizes));
  const choosing = { candidates, prices, lengthM: pieces.lengthM };
  // a part whose file cannot be had is land all the same
  const left = notWorthARegion(runsOf(drawn));
  for (const piece of dearStrips(choosing, left)) left.add(piece);
  const chosen = coverPieces(choosing, left);
  const covered = new Set(chosen.flatMap((at) => candidates[at]!.pieces));
  const regions = chosen
    .map((at) => ({ ...candidates[at]!, price: prices[at]! }))
    .sort((a, b) => a.pieces[0]! - b.pieces[0]!)
    .map(
      ({ region, price, pieces: held }): ChosenRegion => ({
        region,
        price,
        coversM: sumOf(held, pieces.lengthM),
      }),
    );
  return {
    regions,
    bytes: regions.reduce((sum, { price }) => sum + price.bytes, 0),
    guessed: regions.some(({ price }) => price.guessed),
    leftOut: tellLeftOut({ pieces, candidates }, covered, prices),
    lengthM: pieces.lengthM.reduce((sum, length) => sum + length, 0),
  };
}

interface Choosing {
  readonly candidates: readonly Candidate[];
  readonly prices: readonly Price[];
  readonly lengthM: Float64Array;
}

/** The candidates that cover every piece but those left out. @returns indices, rising */
function coverPieces({ candidates, prices, lengthM }: Choosing, left: ReadonlySet<number>): number[] {
  const groups = groupPieces(candidates, left, lengthM);
  const coverers = candidates.map(
    (_, at): Coverer => ({
      items: [...groups.keys()].filter((group) => groups[group]!.holders.includes(at)),
      cost: prices[at]!.bytes,
    }),
  );
  return coverAll(coverers, (group) => groups[group]!.lengthM);
}

/** Pieces that the same candidates hold count as one. */
interface Group {
  readonly holders: readonly number[];
  lengthM: number;
}

function groupPieces(
  candidates: readonly Candidate[],
  left: ReadonlySet<number>,
  lengthM: Float64Array,
): Group[] {
  const groups = new Map<string, Group>();
  for (const [piece, holders] of holdersOf(candidates, lengthM.length).entries()) {
    if (holders.length === 0 || left.has(piece)) continue;
    const key = holders.join();
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { holders, lengthM: lengthM[piece]! });
    else group.lengthM += lengthM[piece]!;
  }
  return [...groups.values()];
}

/** Of each piece the candidates that hold it. */
function holdersOf(candidates: readonly Candidate[], count: number): number[][] {
  const holders: number[][] = Array.from({ length: count }, () => []);
  for (const [at, { pieces }] of candidates.entries()) for (const piece of pieces) holders[piece]!.push(at);
  return holders;
}

/** Pieces of narrow strips within the drive that cost more to hold than all the rest of it. */
function dearStrips(choosing: Choosing, left: ReadonlySet<number>): number[] {
  const { candidates, prices, lengthM } = choosing;
  const holders = holdersOf(candidates, lengthM.length);
  const strips = spansOf(lengthM, (piece) => (left.has(piece) ? '' : holders[piece]!.join()))
    .slice(1, -1)
    .filter(({ value, span }) => value !== '' && span.toM - span.fromM <= STRIP_M);
  const rest = coverPieces(choosing, new Set([...left, ...strips.flatMap(({ pieces }) => pieces)]));
  const restBytes = rest.reduce((sum, at) => sum + prices[at]!.bytes, 0);
  return strips.flatMap(({ pieces }) => {
    const holding = holders[pieces[0]!]!;
    const isHeld = holding.some((at) => rest.includes(at));
    const isDear = holding.every((at) => prices[at]!.bytes > restBytes);
    return rest.length > 0 && !isHeld && isDear ? pieces : [];
  });
}

function tellLeftOut(
  { pieces, candidates }: DrawnThrough,
  covered: ReadonlySet<number>,
  prices: readonly Price[],
): LeftOut[] {
  return spansOf(pieces.lengthM, (piece) => covered.has(piece))
    .filter(({ value }) => !value)
    .map(({ pieces: open, span }): LeftOut => {
      const [cheapest] = candidates
        .flatMap(({ region, pieces: held }, at) => {
          const inside = new Set(held);
          return open.every((piece) => inside.has(piece)) ? [{ region, price: prices[at]! }] : [];
        })
        .sort((a, b) => a.price.bytes - b.price.bytes);
      return { span, ...given({ within: cheapest }) };
    });
}

function sumOf(pieces: readonly number[], lengthM: Float64Array): number {
  return pieces.reduce((sum, piece) => sum + lengthM[piece]!, 0);
}

/** A region made of others that is guessed at more than this many times the choice's bytes is not asked about. */
const FAR_DEARER = 3;

/**
 * The regions whose sizes decide: those chosen by guess, and those that may turn out cheaper. None where the sizes of all
 * chosen ones are known, or will not be.
 */
export function regionsToAskAbout(drawn: DrawnThrough, known: Known): Region[] {
  const { sizes, without, untold } = known;
  const choice = chooseRegions(drawn, known);
  const chosen = new Set(choice.regions.map(({ region }) => region.id));
  const isOpen = ({ id }: Region) => !sizes.has(id) && untold?.has(id) !== true;
  if (!choice.regions.some(({ region }) => isOpen(region))) return [];
  return drawn.candidates
    .filter(
      ({ region, madeOfOthers }) =>
        isOpen(region) &&
        without?.has(region.id) !== true &&
        (chosen.has(region.id) || !madeOfOthers || priceOf(region, sizes).bytes <= FAR_DEARER * choice.bytes),
    )
    .map(({ region }) => region);
}
