import { enableAutoUnmount, mount } from '@vue/test-utils'
import { afterEach, describe, expect, it } from 'vitest'
import GateForm from '../../renderer/gate/GateForm.vue'
import { focusField } from '../../renderer/lighting.ts'
import { useJobStore } from '../../renderer/stores/job.ts'
import { design } from '../../shared/gate/design.ts'
import { wholeGateCases } from '../fixtures/wholeGateCases.ts'
import { carrier, job } from './standIn.ts'

enableAutoUnmount(afterEach)

const group = (path: string): string => path.split('.')[0] ?? ''

const fieldInHand = (): string =>
  document.activeElement instanceof HTMLElement ? (document.activeElement.dataset['field'] ?? '') : ''

describe('a check that is pressed', () => {
  afterEach(() => useJobStore().close())

  it.each(wholeGateCases)('$id leads to an entry of the form', async ({ id, found }) => {
    carrier(job({ entry: { spec: found, typed: {} } }))
    await useJobStore().open(7)
    mount(GateForm, { attachTo: document.body })
    const outcome = design(found)
    const checks = outcome.made ? outcome.design.checks : outcome.stopped.checks
    const fields = checks.filter((check) => check.id === id).map(({ field }) => field)
    expect(fields.length).toBeGreaterThan(0)
    for (const field of fields.filter((one) => one !== '')) {
      expect(focusField(field), field).toBe(true)
      expect(group(fieldInHand())).toBe(group(field))
      // A piece of ironmongery is gone to by itself, not the list it is added from.
      if (/^ironmongery\.\d/.test(field)) expect(fieldInHand()).toMatch(/^ironmongery\.\d/)
      for (let hides = document.activeElement?.closest('details'); hides; hides = null)
        expect(hides.open).toBe(true)
    }
  })
})
