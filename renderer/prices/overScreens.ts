import { lateScreen } from '../lateScreen.ts'

export const ItemCard = lateScreen(() => import('./ItemCard.vue'))
export const AddItem = lateScreen(() => import('./AddItem.vue'))
export const SuppliersCard = lateScreen(() => import('./SuppliersCard.vue'))
export const RiseCheck = lateScreen(() => import('./RiseCheck.vue'))
export const ListView = lateScreen(() => import('./ListView.vue'))
export const RisesView = lateScreen(() => import('./RisesView.vue'))
