const LINES = [
  ['trace-watched', 'rear corner outside'],
  ['trace-nose', 'front corner outside'],
  ['trace-wheel', 'rear wheel inside'],
  ['swing-line', 'where the side was'],
] as const;

/** Which line is which. */
export function Legend() {
  return (
    <ul class="swing-legend small">
      {LINES.map(([kind, say]) => (
        <li key={kind}>
          <svg width="30" height="8" aria-hidden="true">
            <path class={`trace ${kind}`} d="M0 4H30" />
          </svg>
          {say}
        </li>
      ))}
    </ul>
  );
}
