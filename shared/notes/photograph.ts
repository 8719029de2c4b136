/** The longest side a kept photograph has, dots: sharp over a whole sheet of A4. */
export const longestSide = 1600

/** The longest side of its small picture, dots. */
export const thumbnailSide = 240

/** The most a kept photograph may weigh, bytes: about 1.3 MB, so that it goes in one request with its small picture. */
export const mostPhotographBytes = 1_400_000

export const mostThumbnailBytes = 65_536

/** The most photographs of one job, those taken away counted too. */
export const mostPhotographs = 200

/** The most that is said of a photograph, signs. */
export const mostPhotographWords = 300

/** The largest file taken, bytes, and the most dots in it: past any camera that a workshop has. */
export const mostFileBytes = 40 * 1024 * 1024
export const mostDots = 64_000_000

/** A photograph of a job, without its bytes. place: its number among the job's own; width and height in dots. */
export type Photograph = {
  id: number
  jobId: number
  place: number
  words: string
  width: number
  height: number
  addedAt: string
  sha256: string
  size: number
}

/** A photograph as the strip shows it. thumbnail: base64 of a JPEG, null where it is no longer what was put in. */
export type ShownPhotograph = Photograph & { thumbnail: string | null }

/** The size that fits a longest side, whole dots, never enlarged: 4000 × 3000 at 1600 is 1600 × 1200. */
export function fitted(
  { width, height }: { width: number; height: number },
  longest: number,
): { width: number; height: number } {
  const share = Math.min(1, longest / Math.max(width, height))
  return { width: Math.max(1, Math.round(width * share)), height: Math.max(1, Math.round(height * share)) }
}
