import { createPinia } from 'pinia'
import { createApp } from 'vue'
import App from './App.vue'
import { languageBefore, speak } from './language/chosen.ts'
import { speaking } from './language/said.ts'
import { keptLook, wearLook } from './theme/wearLook.ts'
import './theme/fonts.css'
import './theme/boards.css'
import './theme/tokens.css'
import './theme/base.css'

// Nothing is painted before this has run (the page waits for it), so no window starts light and turns dark.
wearLook(keptLook())
const show = () => createApp(App).use(createPinia()).use(speaking).mount('#app')
const language = languageBefore()
if (language === '') show()
else void speak(language).finally(show)
