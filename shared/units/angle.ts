declare const radians: unique symbol
declare const degrees: unique symbol

/** An angle inside geometry. */
export type Radians = number & { readonly [radians]: true }

/** An angle at an edge of the program: spec, book, screen, paper. */
export type Degrees = number & { readonly [degrees]: true }

export const toRadians = (angle: number): Radians => ((angle * Math.PI) / 180) as Radians

export const toDegrees = (angle: number): Degrees => ((angle * 180) / Math.PI) as Degrees
