/** What a page elsewhere tries, and what came of it: 'refused', or what it got. It runs in that page, so it can use nothing from here. */
export type BrowserAttack = readonly [title: string, attack: (target: string) => Promise<string>]

/** Asking: every way a page has of sending something to our address, the cookie of this browser beside it. */
export const browserAttacks: readonly BrowserAttack[] = [
  [
    'an ordinary request with its cookies',
    async (target) => {
      const headers = { 'content-type': 'application/json' }
      const options = { method: 'POST', headers, body: '{}', credentials: 'include' } as const
      return fetch(`${target}/request/sample.remove`, options).then(
        (reply) => reply.text(),
        () => 'refused',
      )
    },
  ],
  [
    'a request whose answer it may not read',
    async (target) => {
      const options = { method: 'POST', body: '{}', mode: 'no-cors', credentials: 'include' } as const
      return fetch(`${target}/request/sample.remove`, options).then(
        (reply) => (reply.type === 'opaque' ? 'refused' : reply.text()),
        () => 'refused',
      )
    },
  ],
  [
    'a parting message',
    async (target) => {
      navigator.sendBeacon(`${target}/request/sample.remove`, new Blob(['{}'], { type: 'text/plain' }))
      await new Promise((done) => setTimeout(done, 120))
      return 'refused'
    },
  ],
  [
    'a form that posts itself in a frame',
    async (target) => {
      document.body.innerHTML = `<iframe name="f"></iframe><form target="f" method="post" enctype="text/plain"
        action="${target}/request/sample.remove"><input name='{"a":"' value='"}'></form>`
      document.querySelector('form')?.submit()
      await new Promise((done) => setTimeout(done, 150))
      return 'refused'
    },
  ],
  [
    'a frame of our page',
    async (target) => {
      const frame = document.createElement('iframe')
      frame.src = `${target}/`
      document.body.append(frame)
      await new Promise((done) => (frame.onload = done))
      try {
        return frame.contentDocument?.title ?? 'refused'
      } catch {
        return 'refused'
      }
    },
  ],
  [
    'our script in its own page',
    async (target) => {
      const script = document.createElement('script')
      script.src = `${target}/own.js`
      document.head.append(script)
      await new Promise((done) => (script.onload = script.onerror = done))
      return document.title === 'stranger' ? 'refused' : document.title
    },
  ],

  [
    'the old way of asking, with its cookies',
    async (target) =>
      new Promise((done) => {
        const asked = new XMLHttpRequest()
        asked.open('POST', `${target}/request/sample.remove`)
        asked.withCredentials = true
        asked.setRequestHeader('content-type', 'application/json')
        asked.onload = () => done(asked.responseText)
        asked.onerror = () => done('refused')
        asked.send('{}')
      }),
  ],
  [
    'headers that a browser keeps to itself',
    async (target) => {
      const headers = {
        'content-type': 'application/json',
        origin: target,
        host: new URL(target).host,
        'sec-fetch-site': 'same-origin',
        cookie: 'x=y',
      }
      const options = { method: 'POST', headers, body: '{}', credentials: 'include' } as const
      return fetch(`${target}/request/sample.remove`, options).then(
        (reply) => reply.text(),
        () => 'refused',
      )
    },
  ],
  [
    'a header that must be asked leave for',
    async (target) =>
      fetch(`${target}/`, { headers: { 'x-requested-with': 'a page' }, credentials: 'include' }).then(
        (reply) => reply.text(),
        () => 'refused',
      ),
  ],
  [
    'another method in place of POST',
    async (target) => {
      const options = { method: 'PUT', body: '{}', credentials: 'include' } as const
      return fetch(`${target}/request/sample.remove`, options).then(
        (reply) => reply.text(),
        () => 'refused',
      )
    },
  ],
  [
    'a form of several parts',
    async (target) => {
      document.body.innerHTML = `<iframe name="f"></iframe><form target="f" method="post" enctype="multipart/form-data"
        action="${target}/request/sample.remove"><input name="a" value="{}"></form>`
      document.querySelector('form')?.submit()
      await new Promise((done) => setTimeout(done, 120))
      return 'refused'
    },
  ],
  [
    'an ordinary form that says it is another method',
    async (target) => {
      document.body.innerHTML = `<iframe name="f"></iframe><form target="f" method="post"
        action="${target}/request/sample.remove?_method=POST"><input name="_method" value="POST"></form>`
      document.querySelector('form')?.submit()
      await new Promise((done) => setTimeout(done, 120))
      return 'refused'
    },
  ],
  [
    'a form whose kind is written as ours',
    async (target) => {
      const body = new Blob(['{}'], { type: 'application/json' })
      try {
        navigator.sendBeacon(`${target}/request/sample.remove`, body)
      } catch {
        return 'refused'
      }
      await new Promise((done) => setTimeout(done, 120))
      return 'refused'
    },
  ],
  [
    'a request that outlives its page',
    async (target) => {
      const options = { method: 'POST', body: '{}', mode: 'no-cors', keepalive: true } as const
      await fetch(`${target}/request/sample.remove`, { ...options, credentials: 'include' }).catch(
        () => undefined,
      )
      return 'refused'
    },
  ],
  [
    'a page without an origin in a frame',
    async (target) => {
      const frame = document.createElement('iframe')
      frame.sandbox.add('allow-scripts')
      frame.srcdoc =
        `<script>fetch('${target}/request/sample.remove', { method: 'POST', credentials: 'include',
        headers: { 'content-type': 'application/json' }, body: '{}' })
        .then((r) => r.text(), () => 'refused').then((said) => parent.postMessage(said, '*'))</` + `script>`
      const said = new Promise<string>((done) => (window.onmessage = ({ data }) => done(String(data))))
      document.body.append(frame)
      return said
    },
  ],
  [
    'a page made of its own address in a frame',
    async (target) => {
      const code = `fetch('${target}/', { credentials: 'include' }).then((r) => r.text(), () => 'refused')
        .then((said) => parent.postMessage(said, '*'))`
      const said = new Promise<string>((done) => (window.onmessage = ({ data }) => done(String(data))))
      const frame = document.createElement('iframe')
      frame.src = `data:text/html,${encodeURIComponent(`<script>${code}</` + `script>`)}`
      document.body.append(frame)
      return said
    },
  ],
  [
    'a socket',
    async (target) =>
      new Promise((done) => {
        const socket = new WebSocket(target.replace('http', 'ws'))
        socket.onopen = () => done('open')
        socket.onerror = () => done('refused')
      }),
  ],
  [
    'a stream of events',
    async (target) =>
      new Promise((done) => {
        const stream = new EventSource(`${target}/request/book.summary`, { withCredentials: true })
        stream.onopen = () => done('open')
        stream.onerror = () => {
          stream.close()
          done('refused')
        }
      }),
  ],
  [
    'this machine’s other names',
    async (target) => {
      const { port } = new URL(target)
      const options = { method: 'POST', body: '{}', mode: 'no-cors', credentials: 'include' } as const
      for (const name of ['localhost', '[::1]', '0.0.0.0', '127.1', '127.0.0.2', '2130706433'])
        await fetch(`http://${name}:${port}/request/sample.remove`, options).catch(() => undefined)
      return 'refused'
    },
  ],
  [
    'a window of our page that it holds on to',
    async (target) => {
      const opened = window.open(`${target}/`)
      await new Promise((done) => setTimeout(done, 150))
      try {
        return opened?.document.title ? opened.document.title : 'refused'
      } catch {
        return 'refused'
      } finally {
        opened?.close()
      }
    },
  ],
  [
    'a window of our page that it sends to a request',
    async (target) => {
      const opened = window.open(`${target}/request/sample.remove`)
      await new Promise((done) => setTimeout(done, 150))
      opened?.close()
      return 'refused'
    },
  ],
  [
    'an address with a key it guessed',
    async (target) => {
      const frame = document.createElement('iframe')
      frame.src = `${target}/open/${'A'.repeat(32)}`
      document.body.append(frame)
      await new Promise((done) => (frame.onload = done))
      return 'refused'
    },
  ],
]
