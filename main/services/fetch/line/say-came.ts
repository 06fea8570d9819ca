import type { HttpTrouble } from '../http/fault.ts';

/** A failure on the line that may pass, in a few words after the server's name. */
export function cameOf(
  trouble: HttpTrouble & {
    readonly kind: 'nameless' | 'unreachable' | 'slow' | 'broken' | 'cut' | 'packing' | 'garbled';
  },
): string {
  switch (trouble.kind) {
    case 'nameless':
      return 'was not found';
    case 'unreachable':
      return `cannot be reached (${trouble.said})`;
    case 'slow':
      return trouble.of === 'connect'
        ? 'did not answer the call'
        : trouble.of === 'silence'
          ? `fell silent for ${Math.round(trouble.ms / 1000)} s`
          : `did not finish within ${Math.round(trouble.ms / 1000)} s`;
    case 'broken':
      return `broke off after ${trouble.bytes} bytes`;
    case 'cut':
      return 'sent an answer that is cut short';
    case 'packing':
      return 'sent an answer that cannot be unpacked';
    case 'garbled':
      return 'sent what cannot be read';
  }
}
