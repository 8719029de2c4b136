import type { Result } from '../../shared/problem.ts'
import { scaledDown, type Scaled } from './pictureWork.ts'

/** Scales a picture down beside the window, so that the window never waits for it. */
const tell = (told: Result<Scaled>): void => self.postMessage(told)

const unread: Result<Scaled> = {
  ok: false,
  problems: [{ code: 'refused', field: '', message: 'It couldn’t be read. Choose it again.' }],
}

self.addEventListener('message', ({ data }: MessageEvent<File>) => {
  scaledDown(data).then(tell, () => tell(unread))
})
