import { fileURLToPath } from 'node:url'
import { vueWithLanguage } from './language/vueWithLanguage.ts'
import { defineConfig, type Plugin } from 'vite'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** Nothing is painted before the first script has run: it says whether the board is light or dark, and in what size. */
const paintsLast: Plugin = {
  name: 'paints-last',
  transformIndexHtml: {
    order: 'post',
    handler: (page) => page.replace('<script type="module"', '<script type="module" blocking="render"'),
  },
}

/**
 * The screens' bundle. Addresses inside are relative, since the same files are served from app://bracework/ and
 * from 127.0.0.1. Nothing is inlined: the content policy of both hosts refuses inline scripts and data: fonts.
 */
export default defineConfig({
  root: here('../renderer'),
  base: './',
  publicDir: false,
  plugins: [vueWithLanguage(), paintsLast],
  clearScreen: false,
  // No screen is written in the older style of components, and nothing of a developer's tools belongs in the window.
  define: { __VUE_OPTIONS_API__: 'false', __VUE_PROD_DEVTOOLS__: 'false' },
  build: {
    outDir: here('out/renderer'),
    emptyOutDir: true,
    target: 'chrome120',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: false,
    reportCompressedSize: false,
  },
})
