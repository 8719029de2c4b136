import type { StepPlace } from '../../shared/job/nextStep.ts'
import { addressOf } from '../stores/place.ts'

/** Where a job's next step is done, as an address. orderId: the order its timber stands on. */
export function stepAddress(at: StepPlace, id: number, orderId?: number): string {
  switch (at) {
    case 'price':
      return addressOf({ name: 'job', id, part: 'price' })
    case 'quotations':
      return addressOf({ name: 'job', id, part: 'price', sheet: 'quotations' })
    case 'order':
      return orderId === undefined
        ? addressOf({ name: 'timber', sheet: 'orders' })
        : addressOf({ name: 'timber', sheet: 'order', id: orderId })
    case 'timber':
      return addressOf({ name: 'timber', sheet: 'make', job: id })
    case 'gate':
    case 'papers':
      return addressOf({ name: 'job', id, part: at })
  }
}
