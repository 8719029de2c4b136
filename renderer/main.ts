import { createPinia } from 'pinia'
import { createApp } from 'vue'
import App from './App.vue'
import './theme/fonts.css'
import './theme/tokens.css'
import './theme/base.css'

createApp(App).use(createPinia()).mount('#app')
