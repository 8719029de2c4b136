import type { BrowserAttack } from './browserAttacks.ts'

/** Loading: every way a page has of taking in a file of ours as a part of itself, to read it or to learn that it is there. */
export const foreignLoads: readonly BrowserAttack[] = [
  [
    'our file as a style sheet',
    async (target) => {
      const link = document.createElement('link')
      link.rel = 'stylesheet'
      link.href = `${target}/own.js`
      document.head.append(link)
      return new Promise((done) => {
        link.onload = () => done('loaded')
        link.onerror = () => done('refused')
      })
    },
  ],
  [
    'our picture',
    async (target) =>
      new Promise((done) => {
        const picture = new Image()
        picture.onload = () => done(`${picture.width} wide`)
        picture.onerror = () => done('refused')
        picture.src = `${target}/icon.svg`
      }),
  ],
  [
    'our letters',
    async (target) =>
      new FontFace('ours', `url(${target}/letters.ttf)`).load().then(
        () => 'loaded',
        () => 'refused',
      ),
  ],
  [
    'our script as a module',
    async (target) => {
      const script = document.createElement('script')
      script.type = 'module'
      script.src = `${target}/own.js`
      document.head.append(script)
      return new Promise((done) => {
        script.onload = () => done('loaded')
        script.onerror = () => done('refused')
      })
    },
  ],
  [
    'our script as a worker',
    async (target) => {
      try {
        const worker = new Worker(`${target}/own.js`)
        return await new Promise<string>((done) => {
          worker.onerror = () => done('refused')
          setTimeout(() => done('loaded'), 400)
        })
      } catch {
        return 'refused'
      }
    },
  ],
  [
    'our script within a worker of its own',
    async (target) => {
      const code = `try { importScripts('${target}/own.js'); postMessage('loaded') } catch { postMessage('refused') }`
      const worker = new Worker(URL.createObjectURL(new Blob([code], { type: 'text/javascript' })))
      return new Promise((done) => (worker.onmessage = ({ data }) => done(String(data))))
    },
  ],
  [
    'our page as an object',
    async (target) => {
      const thing = document.createElement('object')
      thing.data = `${target}/`
      document.body.append(thing)
      await new Promise((done) => setTimeout(done, 150))
      return thing.contentDocument?.title ? thing.contentDocument.title : 'refused'
    },
  ],
  [
    'our file as film and as sound',
    async (target) => {
      const film = document.createElement('video')
      film.src = `${target}/own.js`
      document.body.append(film)
      return new Promise((done) => {
        film.onloadeddata = () => done('loaded')
        film.onerror = () => done('refused')
      })
    },
  ],
  [
    'a guard over our page’s requests',
    async (target) => {
      const guards = navigator.serviceWorker as ServiceWorkerContainer | undefined
      if (!guards) return 'refused'
      return guards.register(`${target}/own.js`, { scope: `${target}/` }).then(
        () => 'registered',
        () => 'refused',
      )
    },
  ],
  [
    'our page fetched ahead',
    async (target) => {
      const link = document.createElement('link')
      link.rel = 'prefetch'
      link.href = `${target}/`
      document.head.append(link)
      await new Promise((done) => setTimeout(done, 120))
      return 'refused'
    },
  ],
]
