import type { Customer } from '../../shared/job/job.ts'

export type SampleCustomer = Omit<Customer, 'id'>

const at = (
  place: string,
  [name, address, town]: [name: string, address: string, town: string],
): SampleCustomer => ({
  name,
  address,
  town,
  // Numbers from 01632 960000 on are kept free for made-up people by the British telephone regulator.
  phone: `01632 960${place}`,
  email: '',
})

/** Nobody here lives: people and places are made up from the words of the bench. */
export const sampleCustomers = {
  thimblecroft: at('101', ['Wenna Thimblecroft', '2 Sawdust Row', 'Nether Shaving']),
  dovetail: {
    ...at('102', ['Barnaby Dovetail-Green', 'The Old Plane House', 'Upper Kerf']),
    email: 'barnaby@example.com',
  },
  pinchbeam: at('103', ['Mrs Pinchbeam', '7 Quince Steps', 'Much Mallet']),
  lathe: at('104', ['Oswin & Tilly Lathe', '14 Chisel Passage', 'Nether Shaving']),
  allotments: {
    ...at('105', [
      'The Committee of the Upper and Lower Shaving Allotment Gardens, Orchard and Beekeeping Association',
      'Hut 1, Gluepot Lane',
      'Lower Shaving-under-Bench',
    ]),
    email: 'secretary@example.org',
  },
  spokeshave: at('106', ['Corin Spokeshave', 'Plot 9, Tenon Field', 'Upper Kerf']),
  copeau: {
    name: 'Zoé Copeau-Lœuillet',
    address: '3 bis, ruelle de l’Établi',
    town: 'Saint-Rabot-les-Échelles',
    phone: '01632 960107',
    email: 'zoe@example.com',
  },
  gimlet: at('108', ['Canon Gimlet', 'The Lodge', 'Much Mallet']),
  bevelstone: at('109', ['Ida Bevelstone', '1 High Wall', 'Arris-on-the-Hill']),
  rebate: at('110', ['Young Rebate', 'Henhouse Cottage', 'Arris-on-the-Hill']),
  mortise: at('111', ['Mortise Row Residents', '1 to 12 Mortise Row', 'Upper Kerf']),
  nobody: { name: '', address: '', town: '', phone: '', email: '' },
}
