/** The day on this computer's clock, 2027-06-12. */
export function localDay(now: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The minute on this computer's clock, 2027-06-12T09:30. */
export function localMinute(now: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${localDay(now)}T${two(now.getHours())}:${two(now.getMinutes())}`;
}
