import vue from '@vitejs/plugin-vue'
import { wrapTemplate } from './wrapTemplate.ts'

/** The compiler of the screens, with the look-up of the chosen language written round their words. The same for the bundle and the tests. */
export const vueWithLanguage = () =>
  vue({ template: { compilerOptions: { nodeTransforms: [wrapTemplate] } } })
