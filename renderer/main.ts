import { createPinia } from 'pinia'
import { createApp } from 'vue'
import App from './App.vue'
import { keptLook, wearLook } from './theme/wearLook.ts'
import './theme/fonts.css'
import './theme/boards.css'
import './theme/tokens.css'
import './theme/base.css'

// Nothing is painted before this has run (the page waits for it), so no window starts light and turns dark.
wearLook(keptLook())
createApp(App).use(createPinia()).mount('#app')
