import { lateScreen } from './lateScreen.ts'

export const JobView = lateScreen(() => import('./job/JobView.vue'))
export const TimberView = lateScreen(() => import('./timber/TimberView.vue'))
export const PricesView = lateScreen(() => import('./prices/PricesView.vue'))
export const WorkshopView = lateScreen(() => import('./workshop/WorkshopView.vue'))
export const CardsView = lateScreen(() => import('./cards/CardsView.vue'))
export const EstimatesView = lateScreen(() => import('./after/EstimatesView.vue'))
export const ShutView = lateScreen(() => import('./keeping/ShutView.vue'), { ahead: false })
export const HelpSheet = lateScreen(() => import('./help/HelpSheet.vue'))
export const CommandList = lateScreen(() => import('./palette/CommandList.vue'))
