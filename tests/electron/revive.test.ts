import { expect, test } from 'vitest'
import { reviveWindow } from '../../electron/revive.ts'
import { makeRecorder } from './recorder.ts'

const settled = () => new Promise((done) => setImmediate(done))

/** A window whose screen can be made to die or hang; `answers` are what the person presses, in turn. */
const alive = (answers: number[] = []) => {
  const loaded: string[] = []
  const log: string[] = []
  const asked: { message: string; buttons: string[]; signal?: AbortSignal }[] = []
  const time = { now: 1000 }
  const did = { quit: 0 }
  const contents = makeRecorder({
    loadURL: async (address: string) => void loaded.push(address),
  })
  const window = makeRecorder({ webContents: contents.object })
  reviveWindow({
    window: window.object,
    dialog: {
      showMessageBox: (async (_window: unknown, options: (typeof asked)[number]) => {
        asked.push(options)
        return { response: answers.shift() ?? 0 }
      }) as never,
    },
    said: (text) => text.replace('Wait', 'Attendez'),
    log: (line) => void log.push(line),
    clock: () => time.now,
    quit: () => void (did.quit += 1),
  })
  const goTo = (address: string, main = true) =>
    contents.handler('on', 'did-navigate-in-page')({}, address, main)
  const die = async (reason = 'crashed') => {
    contents.handler('on', 'render-process-gone')({}, { reason, exitCode: 133 })
    await settled()
  }
  const hang = async () => {
    window.handler('on', 'unresponsive')()
    await settled()
  }
  return { contents, window, loaded, log, asked, time, did, goTo, die, hang }
}

const job = 'app://bracework/#/job/17/papers'

test.each(['crashed', 'oom', 'killed', 'abnormal-exit', 'launch-failed', 'integrity-failure'])(
  'a screen that ends by %s comes back at the job it stood at',
  async (reason) => {
    const shell = alive()
    shell.goTo('app://bracework/#/jobs')
    shell.goTo(job)
    await shell.die(reason)
    expect(shell.loaded).toEqual([job])
    expect(shell.log).toEqual([`the screen ended: ${reason}, 133`])
    expect(shell.asked).toEqual([])
  },
)

test('a window that is closing isn’t opened again', async () => {
  const shell = alive()
  await shell.die('clean-exit')
  expect([shell.loaded, shell.log]).toEqual([[], []])
})

test('neither a frame’s address nor a foreign one is what a screen comes back to', async () => {
  const shell = alive()
  shell.goTo('app://bracework/#/job/4/gate', false)
  shell.goTo('https://example.org/#/job/9')
  await shell.die()
  expect(shell.loaded).toEqual(['app://bracework/'])
})

test('a screen that dies four times in a minute isn’t opened at that job again unasked', async () => {
  const shell = alive([0])
  shell.goTo(job)
  for (let death = 0; death < 4; death += 1) await shell.die()
  expect(shell.asked.map(({ message }) => message)).toEqual([
    'This screen keeps closing by itself. What you entered is kept.',
  ])
  expect(shell.loaded).toEqual([job, job, job, 'app://bracework/'])
  await shell.die()
  expect(shell.loaded.at(-1)).toBe('app://bracework/')
})

test('deaths more than a minute apart are not counted together', async () => {
  const shell = alive()
  shell.goTo(job)
  for (let death = 0; death < 6; death += 1) {
    await shell.die()
    shell.time.now += 31_000
  }
  expect(shell.asked).toEqual([])
  expect(shell.loaded).toHaveLength(6)
})

test('a person who has had enough can close the program', async () => {
  const shell = alive([1])
  for (let death = 0; death < 4; death += 1) await shell.die()
  expect(shell.did.quit).toBe(1)
  expect(shell.loaded).toHaveLength(3)
})

test('a screen that hangs is opened again only if the person says so, and that is no death', async () => {
  const shell = alive([0, 1, 1, 1, 1, 1])
  shell.goTo(job)
  const crashes = () => shell.contents.calls.filter(({ name }) => name === 'forcefullyCrashRenderer').length
  await shell.hang()
  expect([crashes(), shell.asked[0]?.buttons]).toEqual([0, ['Attendez', 'Open it again']])
  for (let time = 1; time <= 5; time += 1) {
    await shell.hang()
    expect(crashes()).toBe(time)
    await shell.die('killed')
  }
  expect(shell.loaded).toEqual([job, job, job, job, job])
  expect(shell.asked.every(({ message }) => message.startsWith('This screen has stopped answering'))).toBe(
    true,
  )
})

test('a screen that answers again takes the question away', async () => {
  const shell = alive()
  shell.window.handler('on', 'unresponsive')()
  shell.window.handler('on', 'responsive')()
  expect(shell.asked[0]?.signal?.aborted).toBe(true)
  await settled()
  expect(shell.loaded).toEqual([])
})
