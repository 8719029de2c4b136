import { registerHooks } from 'node:module'

/** Lets the built program's `require('electron')` find the stand-in; everything else is found as usual. */
registerHooks({
  resolve: (specifier, context, next) =>
    specifier === 'electron'
      ? { url: new URL('./electron.ts', import.meta.url).href, format: 'module', shortCircuit: true }
      : next(specifier, context),
})
