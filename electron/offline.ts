import type { App, Session } from 'electron'

/**
 * What is told to Chromium before it is ready, so that nothing of it looks for a network: no name is ever resolved, and
 * none of its own services (components, reports, speed-ups) calls home.
 */
export const offlineSwitches: readonly (readonly [name: string, value?: string])[] = [
  ['host-resolver-rules', 'MAP * ~NOTFOUND'],
  ['no-proxy-server'],
  ['disable-background-networking'],
  ['disable-component-update'],
  ['disable-domain-reliability'],
  ['disable-sync'],
  ['no-pings'],
  ['disable-quic'],
  ['force-webrtc-ip-handling-policy', 'disable_non_proxied_udp'],
]

/** Takes the program off the network. Call it before the program is ready. */
export const stayOffline = (app: Pick<App, 'commandLine'>): void => {
  for (const [name, value] of offlineSwitches) app.commandLine.appendSwitch(name, value)
}

/** No spelling is checked, so that no word lists are fetched for it, and no name is looked up ahead of a click. */
export const quietSession = (session: Pick<Session, 'setSpellCheckerEnabled'>): void => {
  session.setSpellCheckerEnabled(false)
}
