import { lateScreen } from '../lateScreen.ts'

export const OrdersSheet = lateScreen(() => import('./OrdersSheet.vue'))
export const MakeSheet = lateScreen(() => import('./MakeSheet.vue'))
export const OrderSheet = lateScreen(() => import('./OrderSheet.vue'))
export const RackSheet = lateScreen(() => import('./RackSheet.vue'))
export const CountSheet = lateScreen(() => import('./CountSheet.vue'))
