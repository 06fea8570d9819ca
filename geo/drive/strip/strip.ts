/** The drive unrolled: what a strip map shows along it. Distances are metres along the drive; plain data. */
export interface Strip {
  readonly lengthM: number;
  /** the road driven, piece by piece, without holes */
  readonly pieces: readonly StripPiece[];
  /** how far the road leans, -1 (left) to 1 (right), every `leanStepM` from the start */
  readonly lean: readonly number[];
  readonly leanStepM: number;
  readonly stubs: readonly { readonly atM: number; readonly side: Side; readonly main: boolean }[];
  readonly beside: readonly {
    readonly fromM: number;
    readonly toM: number;
    readonly side: Side;
    readonly kind: 'water' | 'wood' | 'building';
  }[];
  readonly towns: readonly { readonly atM: number; readonly name: string; readonly size: 1 | 2 | 3 }[];
  /** spans where the road driven is a guess between sparse points */
  readonly guessed: readonly { readonly fromM: number; readonly toM: number }[];
  readonly crossings: readonly number[];
  /** what crosses over the road, with its height where the driven road has one mapped there */
  readonly above: readonly { readonly atM: number; readonly rail: boolean; readonly height?: string }[];
}

export type Side = 'left' | 'right';

export interface StripPiece {
  readonly fromM: number;
  readonly toM: number;
  /** carriageway, metres: mapped, or the usual for the class */
  readonly widthM: number;
  /** one line, no longer than a label */
  readonly name?: string;
  readonly ref?: string;
  readonly kind: 'road' | 'bridge' | 'tunnel' | 'ferry' | 'offMap';
}
