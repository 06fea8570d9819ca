import { useState } from 'preact/hooks';
import type { Result } from '../../../geo/result.ts';
import type { Meant } from '../../../geo/units/decimal-feet.ts';
import { endStep } from '../state/state.ts';

/**
 * A field whose figure counts as soon as it can be read. What cannot stays as typed, with a sentence, and changes
 * nothing; leaving the field brings the last good figure back.
 * @param meant what was likely meant by what cannot be read
 */
export function useTyped(
  value: number,
  show: (value: number) => string,
  read: (text: string) => Result<number>,
  take: (value: number) => void,
  meant: (text: string) => readonly Meant[] = () => [],
) {
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const understood = typed === undefined ? undefined : read(typed);
  // changed from elsewhere, as by undo: what was typed no longer stands for it
  const stale = understood?.ok === true && understood.value !== value;
  const text = typed === undefined || stale ? show(value) : typed;
  const type = (text: string) => {
    setTyped(text);
    const figure = read(text);
    if (figure.ok && figure.value !== value) take(figure.value);
  };
  return {
    fault: understood?.ok === false ? understood.error.message : undefined,
    meant: typed !== undefined && understood?.ok === false ? meant(typed) : [],
    takeMeant: type,
    field: {
      value: text,
      inputMode: 'decimal' as const,
      autoComplete: 'off',
      'aria-invalid': understood?.ok === false,
      onInput({ currentTarget }: { currentTarget: HTMLInputElement }) {
        type(currentTarget.value.slice(0, 30));
      },
      onBlur() {
        setTyped(undefined);
        endStep();
      },
    },
  };
}
