import { COACH_BUILT } from '../coach-built.ts';
import { seeded } from '../random-drives.ts';
import { backwards, barred, evenHanded, renumbered, split, withIsland } from './changed-maps.ts';
import { randomTown } from './random-town.ts';
import { type Piece, WayCosts } from './way-costs.ts';

/** Every piece of a way cut in two rounds its seconds up once more, tenths. */
const ROUNDED = 40;
const TALLER = { ...COACH_BUILT, heightM: COACH_BUILT.heightM + 0.6 };

/**
 * What must hold when a map or a vehicle is changed, asked of one random town: what does not matter changes no cost, what
 * bars more makes no way cheaper, the way back costs what the way there does. @returns sentences on what does not hold
 */
export function holdChanges(
  seed: number,
  side: number,
  questions: number,
): { asked: number; broken: string[] } {
  const random = seeded(seed);
  const town = randomTown(random, side);
  const even = evenHanded(town);
  const plain = new WayCosts(town);
  const same = [renumbered(town), withIsland(town)].map((sketch) => new WayCosts(sketch));
  const cut = new WayCosts(split(town));
  const taller = new WayCosts(town, TALLER);
  const [there, back] = [new WayCosts(even), new WayCosts(backwards(even))];
  const pick = (pieces: readonly Piece[]) => pieces[Math.floor(random() * pieces.length)] as Piece;
  const [pieces, evenPieces] = [plain.pieces(), there.pieces()];
  const broken: string[] = [];
  const hold = (holds: boolean, what: string) => {
    if (!holds) broken.push(`town ${seed}: ${what}`);
  };
  for (let i = 0; i < questions; i++) {
    const [from, to] = [pick(pieces), pick(pieces)];
    if (from === to) continue;
    const { cost, ways } = plain.between(from, to);
    const told = `${from.tail}-${from.head} to ${to.tail}-${to.head} costs ${cost}`;
    for (const [k, other] of same.entries())
      hold(
        other.between(from, to).cost === cost,
        `${told}, ${k === 0 ? 'renumbered' : 'with an island'} not`,
      );
    const inPieces = cut.between(from, to).cost;
    hold(inPieces === cost || Math.abs(inPieces - cost) < ROUNDED, `${told}, cut ${inPieces}`);
    hold(taller.between(from, to).cost >= cost, `${told}, taller it is quicker`);
    const [start, end] = [pick(evenPieces), pick(evenPieces)];
    const forth = there.between(start, end, { whole: true }).cost;
    const turned = back.between(reverse(end), reverse(start), { whole: true }).cost;
    hold(
      start === end || forth === turned || Math.abs(forth - turned) < 2,
      `${start.tail}-${start.head} to ${end.tail}-${end.head}: there ${forth}, back ${turned}`,
    );
    const inner = ways.slice(1, -1);
    const one = inner[Math.floor(random() * inner.length)];
    if (one === undefined || one === ways[0] || one === ways.at(-1)) continue;
    const closed = new WayCosts(barred(town, new Set([one]))).between(from, to);
    hold(closed.cost >= cost && !closed.ways.includes(one), `${told}, less with way ${one} closed`);
  }
  return { asked: questions, broken };
}

function reverse({ tail, head }: Piece): Piece {
  return { tail: head, head: tail };
}
