import type { Finding } from './finding.ts';

/** Whether a figure of the firm's own lets the vehicle by where the map leaves it open: told, but folded. */
export function isSettled({ folded, note, limit }: Finding): boolean {
  return folded === true && note !== undefined && limit !== undefined;
}
