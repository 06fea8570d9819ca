/** How long something will take still, as one would say it: `about 2 minutes left`. */
export function sayLeft(seconds: number): string {
  if (seconds < 10) return 'a few seconds left';
  return `${sayTime(seconds)} left`;
}

/** A time roughly: `less than a minute`, `about 5 minutes`, `about 1 hour 20 minutes`. */
export function sayTime(seconds: number): string {
  if (seconds < 50) return 'less than a minute';
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return `about ${inWords(Math.max(1, minutes), 'minute')}`;
  // of hours nobody waits by the minute
  const tens = Math.round(minutes / 10) * 10;
  const rest = tens % 60;
  return `about ${inWords(Math.floor(tens / 60), 'hour')}${rest === 0 ? '' : ` ${inWords(rest, 'minute')}`}`;
}

function inWords(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}
