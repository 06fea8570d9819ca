import { useId } from 'preact/hooks';

/** A choice between a few words, all of them in sight. */
export function OneOf<T extends string>({
  label,
  value,
  among,
  onChoose,
}: {
  label: string;
  value: T;
  among: readonly (readonly [T, string])[];
  onChoose(value: T): void;
}) {
  const name = useId();
  return (
    <fieldset class="one-of">
      <legend>{label}</legend>
      {among.map(([each, say]) => (
        <label key={each} class="one-of-choice">
          <input type="radio" name={name} checked={each === value} onChange={() => onChoose(each)} />
          <span>{say}</span>
        </label>
      ))}
    </fieldset>
  );
}
