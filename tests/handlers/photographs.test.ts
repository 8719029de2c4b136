import { describe, expect, it } from 'vitest'
import { asTaken, smallPhotograph } from '../fixtures/photograph.ts'
import { makeableJob, opened } from './opened.ts'

const jpeg = Buffer.from(smallPhotograph.base64, 'base64')
const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64')
/** The same picture saying at its head that it is 1601 dots wide. */
const tooWide = (): Buffer => {
  const wide = Buffer.from(jpeg)
  const frame = wide.indexOf(Buffer.from([0xff, 0xc0]))
  wide.writeUInt16BE(1601, frame + 7)
  return wide
}

describe('a photograph put into a job', () => {
  it('is looked at by its content: only a whole JPEG, scaled down, without the camera’s notes, of the size told', async () => {
    const context = opened()
    const { id: jobId } = await makeableJob(context)
    const refused = (given: Partial<typeof smallPhotograph>) =>
      context.refused('photographs.add', { jobId, ...smallPhotograph, words: '', ...given })
    expect(await refused({ base64: text(Buffer.from('GIF89a, and nothing of a picture in it')) })).toEqual([
      'refused base64',
    ])
    expect(await refused({ base64: text(jpeg.subarray(0, -2)) })).toEqual(['refused base64'])
    expect(await refused({ base64: text(asTaken(jpeg, 6)) })).toEqual(['refused base64'])
    expect(await refused({ base64: text(tooWide()) })).toEqual(['refused base64', 'refused width'])
    expect(await refused({ width: 6, height: 8 })).toEqual(['refused width'])
    expect(await refused({ thumbnail: text(asTaken(jpeg, 1)) })).toEqual(['refused thumbnail'])
    expect(await refused({ base64: 'A'.repeat(1_900_000) })).toEqual(['refused base64'])
    expect(await context.ask('photographs.list', { jobId })).toEqual([])
    const added = await context.ask('photographs.add', { jobId, ...smallPhotograph, words: ' the post ' })
    expect(added).toMatchObject({ place: 1, words: 'the post', width: 8, height: 6, size: jpeg.length })
  })

  it('of a job that isn’t there is refused, and so is the log of one', async () => {
    const context = opened()
    const photograph = { jobId: 7, ...smallPhotograph, words: '' }
    expect(await context.refused('photographs.add', photograph)).toEqual(['not-found jobId'])
    expect(await context.refused('happened.list', { jobId: 7, kind: null, before: null })).toEqual([
      'not-found jobId',
    ])
  })
})
