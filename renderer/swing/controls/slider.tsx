import { useId } from 'preact/hooks';

/** One quantity to set, its figure always in sight and read out with its unit. */
export function Slider({
  label,
  value,
  min,
  max,
  step,
  text,
  onInput,
}: {
  label: string;
  value: number;
  min: number;
  max: number;
  step: number;
  text: string;
  onInput(value: number): void;
}) {
  const id = useId();
  return (
    <div class="slider">
      <label for={id}>{label}</label>
      <span class="slider-figure" aria-hidden="true">
        {text}
      </span>
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        aria-valuetext={text}
        onInput={({ currentTarget }) => onInput(Number(currentTarget.value))}
      />
    </div>
  );
}
