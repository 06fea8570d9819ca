import type { Finding } from './finding.ts';

/** Whether a figure of the firm's own lets the vehicle by where the map leaves it open: told, but folded. */
export function isSettled({ folded, note, limit }: Finding): boolean {
  return folded === true && note !== undefined && limit !== undefined;
}

/** "2 settled by the firm’s own notes"; '' for none. */
export function saySettledCount(count: number): string {
  if (count === 0) return '';
  return `${count} settled by the firm’s own ${count === 1 ? 'note' : 'notes'}`;
}
