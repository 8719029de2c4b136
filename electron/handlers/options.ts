import { bad } from '../../shared/problem.ts'
import type { Handler } from './context.ts'

const later = () => bad({ code: 'refused', field: '', message: 'this isn’t built yet' })

export const listOptions: Handler<'options.list'> = later
export const addOption: Handler<'options.add'> = later
export const changeOption: Handler<'options.change'> = later
export const removeOption: Handler<'options.remove'> = later
