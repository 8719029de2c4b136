import { config } from '@vue/test-utils'
import { speaking } from '../../renderer/language/said.ts'

/** Each mounted screen has the two functions that the build writes round its words, as the program's own start gives them. */
config.global.plugins.push(speaking)
