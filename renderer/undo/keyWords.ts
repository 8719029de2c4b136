const onMac = /Mac/.test(window.navigator.platform)

/** The keys for taking back and doing again, as this kind of machine names them. */
export const undoKeyWords = onMac ? { back: '⌘Z', again: '⇧⌘Z' } : { back: 'Ctrl+Z', again: 'Ctrl+Y' }
