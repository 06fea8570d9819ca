import { LEVEL_WORD } from '../../geo/report/level.ts';
import { nameSubject } from '../../geo/report/name-place.ts';
import type { Finding } from '../../geo/report/report.ts';
import { lengthIn, type Units } from '../../geo/units/in-units.ts';
import { select } from '../actions/choose.ts';
import { findings } from '../state/check.ts';
import { shownFindings } from '../state/shown.ts';

/** Nearer than this, two findings stand at one place. Metres. */
const SAME_PLACE_M = 5;

/** What comes just before and after: how a place is recognised. */
export function Neighbours({ finding, units }: { finding: Finding; units: Units }) {
  const among = shownFindings.value.length > 1 ? shownFindings.value : findings.value;
  const at = among.findIndex(({ id }) => id === finding.id);
  const before = at > 0 ? among[at - 1] : undefined;
  const after = at >= 0 ? among[at + 1] : undefined;
  return (
    <div class="neighbours">
      <Neighbour say="Before" end="the start" to={before} from={finding} units={units} />
      <Neighbour say="After" end="the end" to={after} from={finding} units={units} />
      <button type="button" onClick={() => openAndFocus(undefined, finding.id)}>
        Close
      </button>
    </div>
  );
}

interface NeighbourProps {
  readonly say: string;
  /** what is there where no finding is */
  readonly end: string;
  readonly to: Finding | undefined;
  readonly from: Finding;
  readonly units: Units;
}

function Neighbour({ say, end, to, from, units }: NeighbourProps) {
  if (!to)
    return (
      <button type="button" disabled>
        {say}: {end}
      </button>
    );
  const apartM = to.fromM - from.fromM;
  const apart = `${lengthIn(units, Math.abs(apartM))} ${apartM < 0 ? 'back' : 'on'}`;
  return (
    <button type="button" onClick={() => openAndFocus(to.id, to.id)}>
      {say}: {LEVEL_WORD[to.level].toLowerCase()}, {nameSubject(to)},{' '}
      {Math.abs(apartM) < SAME_PLACE_M ? 'at the same place' : apart}
    </button>
  );
}

/** The focus goes to the row, so that the keyboard never falls out of the list. */
function openAndFocus(open: string | undefined, focus: string): void {
  select(open);
  requestAnimationFrame(() =>
    document.querySelector<HTMLElement>(`button[data-finding="${CSS.escape(focus)}"]`)?.focus(),
  );
}
