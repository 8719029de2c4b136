/** Reads papers beside the window, so that a large one never holds it up. Loaded when the first paper is shown. */
import 'pdfjs-dist/build/pdf.worker.min.mjs'
