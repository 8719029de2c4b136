/** A piece's length in mm to the next tenth up, as the buying plan takes it: 731.25 is 731.3. A double's dust is taken off first. */
export const upToTenth = (mm: number): number => Math.ceil(mm * 10 - 1e-6) / 10

/** A usable length in mm to the next tenth down, never more than is there: 2403.475 is 2403.4. */
export const downToTenth = (mm: number): number => Math.floor(mm * 10 + 1e-6) / 10
