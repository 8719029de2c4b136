import {
  fitted,
  longestSide,
  mostDots,
  mostFileBytes,
  mostPhotographBytes,
  mostThumbnailBytes,
  thumbnailSide,
} from '../../shared/notes/photograph.ts'
import { dotsIn, pictureKind } from '../../shared/notes/pictureKind.ts'
import { bad, good, type Result } from '../../shared/problem.ts'
import { inBase64 } from '../workshop/logoPicture.ts'

/** A picture scaled down to be kept, with its small one, both JPEGs in base64 with nothing of the camera's notes in them. */
export type Scaled = { base64: string; thumbnail: string; width: number; height: number }

const refused = (message: string): Result<never> => bad({ code: 'refused', field: '', message })

const unopened = 'It can’t be opened: it is damaged or only part of a picture.'
const heic =
  'It is a HEIC picture, as some telephones make. Set the telephone to make JPEG pictures, or send it from there as one.'

/** How good a JPEG is tried first, and then less, until it weighs no more than it may. */
const qualities = [0.86, 0.78, 0.68, 0.55, 0.4]

async function asJpeg(picture: ImageBitmap, longest: number, most: number): Promise<Blob | undefined> {
  const { width, height } = fitted(picture, longest)
  const canvas = new OffscreenCanvas(width, height)
  const pen = canvas.getContext('2d', { alpha: false })
  if (!pen) return undefined
  // What shines through in a PNG stands on white, as on paper.
  pen.fillStyle = '#fff'
  pen.fillRect(0, 0, width, height)
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(picture, 0, 0, width, height)
  for (const quality of qualities) {
    const jpeg = await canvas.convertToBlob({ type: 'image/jpeg', quality })
    if (jpeg.size <= most) return jpeg
  }
  return undefined
}

const inText = async (blob: Blob): Promise<string> => inBase64(new Uint8Array(await blob.arrayBuffer()))

/** A picture the right way up, as the camera was held; undefined where it can't be opened. */
const opened = (file: Blob): Promise<ImageBitmap | undefined> =>
  createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => undefined)

/**
 * Takes a file as a photograph: known by its content, turned the right way up, scaled down to 1600 dots on its long side, written anew as
 * a JPEG (which leaves out where and when it was taken), with a small picture. Refused in a whole sentence otherwise.
 */
export async function scaledDown(file: Blob): Promise<Result<Scaled>> {
  if (file.size > mostFileBytes)
    return refused(
      `It weighs ${Math.ceil(file.size / 1e6)} MB, and up to ${Math.floor(mostFileBytes / 1e6)} MB is taken.`,
    )
  const bytes = new Uint8Array(await file.arrayBuffer())
  const kind = pictureKind(bytes)
  if (kind === 'heic') return refused(heic)
  if (!kind) return refused('It is no JPEG, PNG or WebP picture.')
  const dots = dotsIn(bytes, kind)
  if (dots > mostDots)
    return refused(
      `It has ${Math.round(dots / 1e6)} million dots, and up to ${mostDots / 1e6} million are taken.`,
    )
  const picture = dots > 0 ? await opened(new Blob([bytes], { type: `image/${kind}` })) : undefined
  if (!picture) return refused(unopened)
  try {
    const whole = await asJpeg(picture, longestSide, mostPhotographBytes)
    const small = await asJpeg(picture, thumbnailSide, mostThumbnailBytes)
    if (!whole || !small) return refused(unopened)
    return good({
      base64: await inText(whole),
      thumbnail: await inText(small),
      ...fitted(picture, longestSide),
    })
  } finally {
    picture.close()
  }
}
