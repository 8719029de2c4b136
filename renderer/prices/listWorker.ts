import { lookAtFile, readFile, type ListAsk, type ListTold } from './listWork.ts'

/** Reads lists beside the window, so that the window never waits. One ask at a time; ending the worker breaks it off. */
const tell = (told: ListTold): void => self.postMessage(told)

const unread: ListTold = {
  told: 'refused',
  sentence:
    'The list couldn’t be read. It may be open in another program: close it there and choose it again.',
}

self.addEventListener('message', ({ data }: MessageEvent<ListAsk>) => {
  const answer = data.ask === 'look' ? lookAtFile(data) : readFile(data, tell)
  answer.then(tell, () => tell(unread))
})
