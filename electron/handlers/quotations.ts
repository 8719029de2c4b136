import { bad } from '../../shared/problem.ts'
import type { Handler } from './context.ts'

const later = () => bad({ code: 'refused', field: '', message: 'this isn’t built yet' })

export const draftQuotation: Handler<'quotations.draft'> = later
export const issueQuotation: Handler<'quotations.issue'> = later
export const quotationMoney: Handler<'quotations.money'> = later
export const acceptQuotation: Handler<'quotations.accept'> = later
export const requoteQuotation: Handler<'quotations.requote'> = later
