declare const unit: unique symbol;

/** A number that carries its unit in its type. Constructors below are the only place that adds it. */
export type Branded<U extends string> = number & { readonly [unit]: U };

export type Metres = Branded<'m'>;
export type Kilograms = Branded<'kg'>;

export const metres = (value: number): Metres => value as Metres;
export const kilograms = (value: number): Kilograms => value as Kilograms;
