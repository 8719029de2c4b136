import { lateScreen } from '../lateScreen.ts'

export const EstimateSheet = lateScreen(() => import('./EstimateSheet.vue'))
export const OptionsSheet = lateScreen(() => import('./OptionsSheet.vue'))
export const QuotationsSheet = lateScreen(() => import('./QuotationsSheet.vue'))
export const TookSheet = lateScreen(() => import('../after/TookSheet.vue'))
