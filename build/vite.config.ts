import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import vue from '@vitejs/plugin-vue'
import { defineConfig, type Plugin } from 'vite'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** Gives the page the program's own icon, so that a browser's tab has it too. */
const icon: Plugin = {
  name: 'bracework-icon',
  transformIndexHtml: () => [
    { tag: 'link', attrs: { rel: 'icon', type: 'image/svg+xml', href: './icon.svg' }, injectTo: 'head' },
  ],
  generateBundle() {
    this.emitFile({ type: 'asset', fileName: 'icon.svg', source: readFileSync(here('icons/icon.svg')) })
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
  plugins: [vue(), icon],
  clearScreen: false,
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
