import { Cursor, damaged } from './cursor.ts';

/** Growing room for packed numbers, reused from block to block. */
export interface Room {
  values: Float64Array;
}

/** Room for packed numbers, used again from message to message and grown when one needs more. */
export function newRoom(): Room {
  return { values: new Float64Array(8192) };
}

function reserve(room: Room, count: number): Float64Array {
  if (room.values.length < count) room.values = new Float64Array(count);
  return room.values;
}

/** So many bytes are given room for a number each; of more they are counted first. */
const COUNTED_FROM = 64 * 1024;

/** How many numbers a stretch of bytes can hold at most: a number ends with each byte below 0x80. */
function countNumbers(bytes: Uint8Array, from: number, to: number): number {
  if (to - from < COUNTED_FROM) return to - from;
  let count = 0;
  for (let pos = from; pos < to; pos++) if (bytes[pos]! < 0x80) count++;
  return count;
}

/**
 * A packed field of zigzag differences as running sums. Throws a Refusal where there are more than `most`.
 * @returns how many values; they are room.values[0 .. count)
 */
export function packedSums(cursor: Cursor, room: Room, most = Number.POSITIVE_INFINITY): number {
  const { bytes } = cursor;
  const length = cursor.length();
  const end = cursor.pos + length;
  const held = countNumbers(bytes, cursor.pos, end);
  if (held > most) throw damaged(`a list of ${held} numbers, over the ${most} that are read`);
  const out = reserve(room, held);
  let pos = cursor.pos;
  let sum = 0;
  let count = 0;
  while (pos < end) {
    let byte = bytes[pos++]!;
    let low = byte & 0x7f;
    if (byte >= 0x80) {
      byte = bytes[pos++]!;
      low |= (byte & 0x7f) << 7;
      if (byte >= 0x80) {
        byte = bytes[pos++]!;
        low |= (byte & 0x7f) << 14;
        if (byte >= 0x80) {
          byte = bytes[pos++]!;
          low |= (byte & 0x7f) << 21;
        }
      }
    }
    if (byte < 0x80) sum += (low >>> 1) ^ -(low & 1);
    else {
      let value = low;
      let scale = 2 ** 28;
      do {
        if (pos >= end || scale > 2 ** 63) throw damaged('a number cut off or too long');
        byte = bytes[pos++]!;
        value += (byte & 0x7f) * scale;
        scale *= 128;
      } while (byte >= 0x80);
      sum += value % 2 === 0 ? value / 2 : -(value + 1) / 2;
      if (value > Number.MAX_SAFE_INTEGER || !Number.isSafeInteger(sum))
        throw damaged('a number beyond 2^53');
    }
    out[count++] = sum;
  }
  if (pos > end) throw damaged('a number cut off');
  cursor.pos = end;
  return count;
}

/** A packed field of unsigned numbers. */
export function packedUints(cursor: Cursor, room: Room): number {
  const { bytes } = cursor;
  const length = cursor.length();
  const end = cursor.pos + length;
  const out = reserve(room, countNumbers(bytes, cursor.pos, end));
  let count = 0;
  for (let pos = cursor.pos; pos < end; ) {
    const byte = bytes[pos]!;
    const next = bytes[pos + 1]!;
    // most are numbers of texts, of one byte or two
    if (byte < 0x80) {
      out[count++] = byte;
      pos++;
    } else if (next < 0x80 && pos + 1 < end) {
      out[count++] = (byte & 0x7f) | (next << 7);
      pos += 2;
    } else {
      const long = new Cursor(bytes, pos, end);
      out[count++] = long.uint();
      pos = long.pos;
    }
  }
  cursor.pos = end;
  return count;
}
