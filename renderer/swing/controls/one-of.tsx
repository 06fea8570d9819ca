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
  among: readonly T[];
  onChoose(value: T): void;
}) {
  const name = useId();
  return (
    <fieldset class="one-of">
      <legend>{label}</legend>
      {among.map((each) => (
        <label key={each} class="one-of-choice">
          <input type="radio" name={name} checked={each === value} onChange={() => onChoose(each)} />
          <span>{each}</span>
        </label>
      ))}
    </fieldset>
  );
}
