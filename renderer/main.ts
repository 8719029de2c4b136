import { createPinia } from 'pinia'
import { createApp } from 'vue'
import App from './App.vue'
import { languageBefore, speak } from './language/chosen.ts'
import { speaking } from './language/said.ts'
import './theme/fonts.css'
import './theme/tokens.css'
import './theme/base.css'

const show = () => createApp(App).use(createPinia()).use(speaking).mount('#app')
const language = languageBefore()
if (language === '') show()
else void speak(language).finally(show)
