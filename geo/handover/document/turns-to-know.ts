import { rankOf } from '../../report/level.ts';
import { mostOutM, sayKeepFree, sayTurnDeg } from '../../report/say-turn-figures.ts';
import type { Turn } from '../../report/turn.ts';
import { shortIn } from '../../units/in-units.ts';
import { capital } from '../../units/text.ts';
import type { PlaceToKnow, TurnToKnow } from './document.ts';

/** So many turns are shown. */
const MOST_TURNS = 5;
/** Two findings no farther apart are of one turn. Metres. */
const SAME_TURN_M = 5;

/** The more room a turn takes, the tighter it is. */
const ROOM_RANK: Readonly<Record<Turn['room'], number>> = {
  'back up': 0,
  'whole road': 1,
  'other lane on the exit': 2,
  'own lane': 3,
};

type AtTurn = PlaceToKnow & { readonly finding: { readonly turn: Turn } };

/** The tightest turns among the places, in driving order: by the room they take, then by how far the tail goes out. */
export function turnsToKnow(places: readonly PlaceToKnow[]): TurnToKnow[] {
  const turns: AtTurn[] = [];
  for (const place of gravestFirst(places)) {
    const { finding } = place;
    if (finding.turn === undefined) continue;
    if (turns.some((other) => Math.abs(other.finding.fromM - finding.fromM) < SAME_TURN_M)) continue;
    turns.push({ ...place, finding: { ...finding, turn: finding.turn } });
  }
  const tightest = turns
    .sort(
      (a, b) =>
        ROOM_RANK[a.finding.turn.room] - ROOM_RANK[b.finding.turn.room] ||
        b.finding.turn.swing.planToM - a.finding.turn.swing.planToM,
    )
    .slice(0, MOST_TURNS);
  return tightest.sort((a, b) => a.number - b.number).map(turnToKnow);
}

function gravestFirst(places: readonly PlaceToKnow[]): PlaceToKnow[] {
  return [...places].sort((a, b) => rankOf(a.finding.level) - rankOf(b.finding.level));
}

function turnToKnow({ number, label, finding, say }: AtTurn): TurnToKnow {
  const { turn } = finding;
  return {
    number,
    label,
    turn,
    title: `${capital(turn.kind)}, ${turn.side}, ${sayTurnDeg(turn)}`,
    say,
    keep: `${capital(sayKeepFree(turn, 'both'))}: so far the tail may go out with the wheel hard over${turn.room === 'back up' ? '' : `; up to ${shortIn('both', mostOutM(turn), 'up')} on the way drawn`}.`,
  };
}
