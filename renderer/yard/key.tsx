import { LEVEL_WORD, VERDICTS } from '../../geo/report/level.ts';
import { VerdictMark } from '../look/level-mark.tsx';

/** Narrower than this the marks are told when they are asked for. */
const WIDE_PX = 900;

/** What the marks of the grid mean. */
export function Key() {
  if (window.innerWidth >= WIDE_PX) return <Marks />;
  return (
    <details class="small">
      <summary>What the marks mean</summary>
      <Marks />
    </details>
  );
}

function Marks() {
  return (
    <ul class="yard-key small" aria-label="What the marks mean">
      {VERDICTS.map((verdict) => (
        <li key={verdict} class={`level-${verdict}`}>
          <VerdictMark verdict={verdict} size={14} /> {LEVEL_WORD[verdict].toLowerCase()}
        </li>
      ))}
      <li>
        <b>3</b> places of that kind
      </li>
      <li>
        <b>−0.21 m</b> over by that; no minus: to spare
      </li>
      <li>
        <span class="yard-key-box yard-old" /> out of date, check again
      </li>
      <li>
        <span class="yard-key-dot" /> changed since seen
      </li>
      <li>
        <b>·</b> not checked
      </li>
      <li>
        <b>×</b> cannot be checked
      </li>
    </ul>
  );
}
