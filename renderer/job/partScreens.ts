import { lateScreen } from '../lateScreen.ts'

export const GateView = lateScreen(() => import('../gate/GateView.vue'))
export const PriceView = lateScreen(() => import('../price/PriceView.vue'))
export const PapersView = lateScreen(() => import('../papers/PapersView.vue'))
export const CustomerView = lateScreen(() => import('./CustomerView.vue'))
export const NotesView = lateScreen(() => import('../notes/NotesView.vue'))
